// The page in one file begins here, and so does its worker, which is made of this same text. `cargo task bundle` writes
// before it what says messages, what reads base data, and two names: `loaders`, the loader of each module by the module's file, and `own`, the
// file of the page's own.
// No module script, since Chromium starts no worker with one from a `file:` address.
const file = (path) => [...document.scripts].find((element) => element.dataset.file === path);

// A file that comes with the page, expanded.
async function unpack(path) {
  const packed = file(path);
  if (!packed) throw `there is no ${path} in this file`;
  const letters = atob(packed.textContent);
  const bytes = new Uint8Array(letters.length);
  for (let at = 0; at < letters.length; at += 1) bytes[at] = letters.charCodeAt(at);
  return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip")));
}

function stop(fault) {
  // What the module itself said before it stopped comes first.
  const details = document.getElementById("notice-details");
  details.textContent = [details.textContent.trim(), String(fault)].filter(Boolean).join("\n");
  document.getElementById("notice").hidden = false;
}

// The module that reads base data.
const READERS = "hobnail_readers_bg.wasm";

// A worker made of this same text.
function startOwn() {
  const text = document.querySelector("script[data-start]").textContent;
  return new Worker(URL.createObjectURL(new Blob([text], { type: "text/javascript" })));
}

const compiledOf = async (path) => WebAssembly.compile(await (await unpack(path)).arrayBuffer());

// A plan that came inside the page, in an element that is data and no script.
const PLAN = "script[data-plan-inside]";

async function startPage() {
  // The page as it came, before anything is shown in it.
  const asItCame = document.documentElement.outerHTML;
  // What the module asks of the script that loaded it; web/start.js answers the same from files beside the page.
  globalThis.hobnail = {
    // The text of a file that comes with the page.
    readText: async (path) => (await unpack(path)).text(),
    // A worker that runs the compiled module.
    startWorker(compiled) {
      const worker = startOwn();
      worker.postMessage([hobnailWords.spoken(), compiled]);
      return worker;
    },
    // A worker that reads a file of base data, which it is asked for as soon as the module is there.
    startReading(asked) {
      const worker = startOwn();
      compiledOf(READERS).then(
        (compiled) => worker.postMessage([null, compiled, asked]),
        (fault) => worker.onmessage?.({ data: ["failed", String(fault)] }),
      );
      return worker;
    },
    holdsPage: () => true,
    // The page with this plan inside instead of the one that was.
    pageWith(plan) {
      const page = new DOMParser().parseFromString(asItCame, "text/html");
      page.querySelector(PLAN)?.remove();
      const inside = page.createElement("script");
      inside.type = "application/geo+json";
      inside.dataset.planInside = "";
      // No text of a plan can end the element early: JSON spells this letter another way too.
      inside.textContent = plan.replaceAll("<", "\\u003c");
      page.body.prepend(inside);
      return `<!doctype html>\n${page.documentElement.outerHTML}\n`;
    },
    carriedPlan: () => document.querySelector(PLAN)?.textContent,
  };
  try {
    const language = hobnailWords.chosen();
    hobnailWords.use(language, await hobnail.readText(hobnailWords.fileOf(language)));
    await loaders[own]({ module_or_path: await compiledOf(own) });
  } catch (fault) {
    stop(fault);
    throw fault;
  }
}

if (globalThis.document) {
  startPage();
} else {
  // The worker is handed the messages of the window's language and the compiled module, starts it, and from then on the
  // module itself answers. A worker that reads base data is handed no messages, but what it is asked for.
  self.onmessage = async (event) => {
    const [spoken, compiled, asked] = event.data;
    if (!spoken) {
      await loaders[READERS]({ module_or_path: compiled });
      const post = (message, given = []) => self.postMessage(message, given);
      return hobnailReading(loaders[READERS].Reading, asked, post);
    }
    hobnailWords.use(...spoken);
    loaders[own]({ module_or_path: compiled });
  };
}
