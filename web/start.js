// Loads the page's module and answers for the files beside the page. A file of its own because the page allows no script
// written inside it.
const script = document.querySelector("script[data-module]");
const beside = (path) => new URL(path, document.baseURI).href;

function stop(fault) {
  // What the module itself said before it stopped comes first.
  const details = document.getElementById("notice-details");
  details.textContent = [details.textContent.trim(), String(fault)].filter(Boolean).join("\n");
  document.getElementById("notice").hidden = false;
}

// What the module asks of the script that loaded it; web/one_file.js answers the same from within one file.
globalThis.hobnail = {
  // The text of a file that comes with the page.
  async readText(path) {
    const answer = await fetch(beside(path));
    if (!answer.ok) throw `the answer was ${answer.status}`;
    return answer.text();
  },
  // A worker that runs the compiled module.
  startWorker(compiled) {
    const worker = new Worker(beside("worker.js"), { type: "module" });
    worker.postMessage([beside("words.js"), hobnailWords.spoken(), beside(script.dataset.module), compiled]);
    return worker;
  },
  // A worker that reads a file of base data, which it is asked for at once.
  startReading(asked) {
    const worker = new Worker(beside("reading.js"), { type: "module" });
    worker.postMessage([beside("hobnail_readers.js"), asked]);
    return worker;
  },
  // The page is in many files, so it can not be saved with a plan inside, and none came in it.
  holdsPage: () => false,
  pageWith() {
    throw "the page is not in one file";
  },
  carriedPlan: () => undefined,
};

try {
  await import(beside("words.js"));
  const language = hobnailWords.chosen();
  hobnailWords.use(language, await hobnail.readText(hobnailWords.fileOf(language)));
  const module = await import(beside(script.dataset.module));
  await module.default({ module_or_path: new URL(script.dataset.wasm, document.baseURI) });
} catch (fault) {
  stop(fault);
  throw fault;
}

// From here on without a network too, where the browser can; the page does not wait for it.
if (navigator.serviceWorker) import(beside("new_version.js"));
