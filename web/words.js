// Puts messages into words for the page's module and for its worker, in the language of this window, by the library
// that `web/write_words.mjs` writes before this text when the page is built. The module carries no words of its own.
globalThis.hobnailWords = (() => {
  const { FluentBundle, FluentNumber, FluentResource } = globalThis.FluentBundle;
  const LANGUAGES = ["en", "es"];
  const CHOSEN = "hobnail language";
  const HANDED_OVER = "hobnail handed over";
  let language = LANGUAGES[0];
  let text = "";
  let bundle = null;
  // The names of all messages, in the order in which the module numbers them.
  let ids = [];

  // A browser may refuse to remember anything; then the language is that of the browser, each time.
  function remembered(store) {
    try {
      return globalThis[store]?.getItem(CHOSEN);
    } catch {
      return null;
    }
  }

  return {
    // The language of this window: as chosen in it, else as chosen last, else the first of the browser's that is there.
    chosen() {
      const wanted = [remembered("sessionStorage"), remembered("localStorage"), ...navigator.languages];
      const codes = wanted.map((code) => code?.split("-")[0]);
      return codes.find((code) => LANGUAGES.includes(code)) ?? LANGUAGES[0];
    },
    // The file of a language's messages, among the page's files.
    fileOf: (code) => `messages_${code}.ftl`,
    // Speaks a language from here on, with the text of its messages; puts the words into the page as it was written.
    use(code, messages) {
      [language, text] = [code, messages];
      bundle = new FluentBundle(code, { useIsolating: false });
      bundle.addResource(new FluentResource(messages));
      ids = messages.match(/^[a-z][a-z0-9-]*(?= *=)/gim).sort();
      if (!globalThis.document) return;
      document.documentElement.lang = code;
      for (const element of document.querySelectorAll("[data-say]")) {
        element.textContent = this.find(element.dataset.say) ?? element.textContent;
      }
    },
    // What `use` was told, for a worker.
    spoken: () => [language, text],
    language: () => language,
    // The words of a message by its place, `names` those of its values, each with a comma behind; nothing when it can not
    // be said.
    say(place, names, given) {
      const values = {};
      names.split(",").slice(0, -1).forEach((name, at) => {
        const value = given[at];
        values[name] = typeof value === "number" ? new FluentNumber(value, { useGrouping: false }) : value;
      });
      return this.find(ids[place], values);
    },
    // The words of a message by its name.
    find(id, values = {}) {
      const pattern = bundle.getMessage(id)?.value;
      if (!pattern) return undefined;
      const faults = [];
      const words = bundle.formatPattern(pattern, values, faults);
      return faults.length ? undefined : words;
    },
    // Starts the page anew in this language; `plan` says how the plan that is open now is opened again.
    startAgain(code, plan) {
      sessionStorage.setItem(HANDED_OVER, plan);
      sessionStorage.setItem(CHOSEN, code);
      localStorage.setItem(CHOSEN, code);
      location.reload();
    },
    // How the plan is opened that was open before the page started anew, told once.
    handedOver() {
      try {
        const plan = sessionStorage.getItem(HANDED_OVER);
        sessionStorage.removeItem(HANDED_OVER);
        return plan ?? undefined;
      } catch {
        return undefined;
      }
    },
  };
})();
