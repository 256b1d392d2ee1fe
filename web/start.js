// Loads the page's module. A file of its own because the page allows no script written inside it.
const script = document.querySelector("script[data-module]");

function stop(fault) {
  document.getElementById("notice-details").textContent = String(fault);
  document.getElementById("notice").hidden = false;
}

try {
  const module = await import(new URL(script.dataset.module, document.baseURI));
  await module.default({ module_or_path: new URL(script.dataset.wasm, document.baseURI) });
} catch (fault) {
  stop(fault);
  throw fault;
}
