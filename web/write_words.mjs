// Run by trunk with each build (Trunk.toml): writes the script that says messages, with the library it needs, and the
// messages of each language in one file.
import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const folder = process.env.TRUNK_STAGING_DIR;
if (!folder) throw new Error("trunk says in TRUNK_STAGING_DIR what it built");
const library = process.env.HOBNAIL_FLUENT;
if (!library) throw new Error("HOBNAIL_FLUENT names the file of the library for messages; `cargo task` sets it");
const own = readFileSync(new URL("words.js", import.meta.url), "utf8");
writeFileSync(join(folder, "words.js"), `${readFileSync(library, "utf8")}\n${own}`);
const messages = new URL("../core/messages/", import.meta.url);
for (const language of readdirSync(messages)) {
  const files = readdirSync(new URL(`${language}/`, messages)).sort();
  const texts = files.map((file) => readFileSync(new URL(`${language}/${file}`, messages), "utf8"));
  // Comments are for translators.
  const lines = texts.join("\n").split("\n").filter((line) => line && !line.startsWith("#"));
  writeFileSync(join(folder, `messages_${language}.ftl`), lines.join("\n") + "\n");
}
