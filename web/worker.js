// The worker begins here: it is told where the scripts lie that say messages and load the module, and is handed the
// messages of the window's language and the compiled module. It starts that, and from then on the module itself answers.
self.onmessage = async (event) => {
  const [words, spoken, script, compiled] = event.data;
  await import(words);
  hobnailWords.use(...spoken);
  const module = await import(script);
  await module.default({ module_or_path: compiled });
};
