// The worker begins here: it is told where the module's script lies and is handed the compiled module, starts it, and
// from then on the module itself answers.
self.onmessage = async (event) => {
  const [script, compiled] = event.data;
  const module = await import(script);
  await module.default({ module_or_path: compiled });
};
