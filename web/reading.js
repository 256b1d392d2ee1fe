// Reads files of base data in a worker: hands each to the module of the readers and its features to the page, piece by
// piece. Ended by whoever no longer wants it, and then nothing of it is left. The page in one file holds this text too.
globalThis.hobnailReading = async (Reading, { file, beside, options }, post) => {
  const bytes = async (file) => new Uint8Array(await file.arrayBuffer());
  try {
    const reading = new Reading(file.name, await bytes(file), options);
    for (const other of beside) reading.add_beside(other.name, await bytes(other));
    let told = 0;
    for (let share = 0; share < 1; ) {
      share = reading.step();
      // A hundred messages say all there is to say.
      if (share - told >= 0.01) post(["share", (told = share)]);
    }
    post(["base", reading.result()]);
    for (let piece; (piece = reading.piece()); piece.free()) {
      const [shapes, positions] = [piece.shapes(), piece.positions()];
      post(["piece", shapes, positions, piece.words()], [shapes.buffer, positions.buffer]);
    }
    post(["end"]);
    // Heights are asked for as long as somebody chooses how many; what goes wrong then ends the worker.
    globalThis.onmessage = ({ data }) => {
      const heights = reading.heights(data);
      const heights_mm = heights.heights_mm();
      post(["heights", heights.numbers(), heights_mm], [heights_mm.buffer]);
      heights.free();
    };
  } catch (fault) {
    // What the readers throw is a list of faults; all else is a fault of our own, or too little memory.
    post(Array.isArray(fault) ? ["refused", fault] : ["failed", String(fault)]);
  }
};

// A worker of its own where the page is in many files: it is told where the module's script lies.
if (!globalThis.document && !globalThis.hobnailWords) {
  self.onmessage = async (event) => {
    const [script, asked] = event.data;
    try {
      const module = await import(script);
      await module.default();
      hobnailReading(module.Reading, asked, (message, given = []) => self.postMessage(message, given));
    } catch (fault) {
      self.postMessage(["failed", String(fault)]);
    }
  };
}
