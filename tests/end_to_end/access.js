// Looks at the page as it stands for what would keep someone out, and gives back one line for each finding.
// Arguments: whether the rules of axe-core are asked too, and what is called with the lines.
const [asksRules, done] = arguments;

// The success criteria of WCAG 2.0, 2.1 and 2.2 at levels A and AA, which are what the page is held to, and the rules
// of thumb beside them, since landmarks and the order of headings are in no criterion that a program can tell. None is
// switched off.
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

// WCAG 2.2, success criterion 2.5.8: a target's least width and height in CSS pixels.
const LEAST_PX = 24;

const nameOf = element => {
  const classes = [...element.classList].map(name => `.${name}`).join('');
  const words = (element.getAttribute('aria-label') || element.textContent || element.value || '').trim();
  return `${element.localName}${element.id && `#${element.id}`}${classes} "${words.slice(0, 30)}"`;
};

// Whether something between an element and the page scrolls sideways, so that what is out of sight can be reached.
const isInScroller = element => {
  for (let over = element.parentElement; over; over = over.parentElement) {
    if (/auto|scroll/.test(getComputedStyle(over).overflowX) && over.scrollWidth > over.clientWidth) {
      return over !== document.documentElement && over !== document.body;
    }
  }
  return false;
};

const controls = [...document.querySelectorAll('a[href], button, input, select, summary, textarea, [tabindex="0"]')]
  .filter(element => element.checkVisibility({ visibilityProperty: true, opacityProperty: true }))
  // Neither seen nor reached by the keyboard; the link that appears when it has the keyboard.
  .filter(element => !element.closest('[aria-hidden="true"], .skip, [hidden]'));

// What can be pressed in place of a radio button or a tick is the label that holds it.
const boxOf = element => {
  const label = element.matches('[type="radio"], [type="checkbox"]') && element.closest('label');
  return (label || element).getBoundingClientRect();
};

const boxes = controls.map(element => [element, boxOf(element)]).filter(([, box]) => box.width && box.height);
const isSmall = box => box.width < LEAST_PX - 0.05 || box.height < LEAST_PX - 0.05;
const middle = box => [(box.left + box.right) / 2, (box.top + box.bottom) / 2];

// The exception of spacing: a circle of the least width about its middle meets no other target, nor the circle about
// another that is small.
const isApart = ([element, box]) => {
  const [x, y] = middle(box);
  return boxes.every(([other, at]) => {
    if (other === element) return true;
    const [otherX, otherY] = middle(at);
    if (isSmall(at) && Math.hypot(otherX - x, otherY - y) < LEAST_PX) return false;
    const right = Math.max(at.left - x, 0, x - at.right);
    const down = Math.max(at.top - y, 0, y - at.bottom);
    return Math.hypot(right, down) >= LEAST_PX / 2;
  });
};

// The exception of inline text: a link in the line of a sentence is as high as the line.
const isInSentence = element => element.localName === 'a' && getComputedStyle(element).display === 'inline';

const lines = [];
for (const held of boxes) {
  const [element, box] = held;
  if (isSmall(box) && !isInSentence(element) && !isApart(held)) {
    lines.push(`too small: ${nameOf(element)} is ${box.width.toFixed(1)} by ${box.height.toFixed(1)} px`);
  }
  const isOut = box.left < -0.5 || box.right > document.documentElement.clientWidth + 0.5;
  if (isOut && !isInScroller(element)) {
    lines.push(`out of the window: ${nameOf(element)}, from ${box.left.toFixed(0)} to ${box.right.toFixed(0)} px`);
  }
}

const page = document.scrollingElement;
if (page.scrollWidth > page.clientWidth) {
  lines.push(`the page scrolls sideways: ${page.scrollWidth} px in ${page.clientWidth} px`);
}

if (asksRules) {
  const told = found => {
    for (const { id, help, nodes } of found.violations) {
      lines.push(`${id}: ${help}: ${nodes.map(node => node.target.flat().join(' ')).join('; ')}`);
    }
    done(lines);
  };
  axe.run(document, { runOnly: { type: 'tag', values: TAGS }, resultTypes: ['violations'] })
    .then(told, fault => done([...lines, `the rules could not be asked: ${fault}`]));
} else {
  done(lines);
}
