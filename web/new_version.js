// Installs the service worker, with which the page opens without a network, and says in a quiet line when a new version
// of the page is there. The page is loaded anew only by the person who asks for it, and only once all that was drawn is
// kept in the browser.
const line = document.getElementById("new-version");
const registration = await navigator.serviceWorker.register(new URL("service_worker.js", document.baseURI), {
  updateViaCache: "none",
});

function offer() {
  // Without a controller there was no older version, and this page is the new one.
  line.hidden = !(registration.waiting && navigator.serviceWorker.controller);
}

registration.addEventListener("updatefound", () => {
  registration.installing?.addEventListener("statechange", offer);
});
offer();

// What the page says of the plan: "yes", "soon" or "no", nothing of one that was not changed.
const kept = () => document.querySelector("[data-kept]")?.dataset.kept;
const beat = () => new Promise((resolve) => setTimeout(resolve, 50));

line.querySelector("button").addEventListener("click", async () => {
  while (kept() === "soon") await beat();
  const isLost = kept() === "no";
  line.querySelector("[data-not-kept]").hidden = !isLost;
  if (isLost) return;
  const { plan } = document.querySelector("[data-kept]")?.dataset ?? {};
  const startAgain = () => {
    try {
      hobnailWords.startAgain(hobnailWords.language(), plan ? `kept ${plan}` : "");
    } catch {
      // Nothing is remembered for the page to come; a plan that is kept is offered again there.
      location.reload();
    }
  };
  navigator.serviceWorker.addEventListener("controllerchange", startAgain);
  // Another window may have asked for it already.
  if (registration.waiting) registration.waiting.postMessage("use");
  else startAgain();
});
