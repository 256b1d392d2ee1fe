// Run by trunk after each build (Trunk.toml): writes what the licenses of all that is inside ask for, their own text, into
// the built folder; each text once, under the names of those it is of.
import { execFileSync } from "node:child_process";
import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

const folder = process.env.TRUNK_STAGING_DIR;
if (!folder) throw new Error("trunk says in TRUNK_STAGING_DIR what it built");
const library = process.env.HOBNAIL_FLUENT;
if (!library) throw new Error("HOBNAIL_FLUENT names the file of the library for messages; `cargo task` sets it");

const BUILT = ["hobnail_web", "hobnail_readers"];
const asked = ["metadata", "--locked", "--format-version", "1", "--filter-platform", "wasm32-unknown-unknown"];
const metadata = JSON.parse(execFileSync("cargo", asked, { maxBuffer: 1 << 28 }));
const packages = new Map(metadata.packages.map((held) => [held.id, held]));
const nodes = new Map(metadata.resolve.nodes.map((node) => [node.id, node]));

// What is linked into the modules: neither what only tests or the build need, nor what runs while compiling.
const linked = new Map();
const open = metadata.packages.filter(({ name }) => BUILT.includes(name)).map(({ id }) => id);
if (open.length !== BUILT.length) throw new Error("the crates of the page are named otherwise");
while (open.length > 0) {
  const id = open.pop();
  const held = packages.get(id);
  const runsWhileCompiling = held.targets.every(({ kind }) => kind.includes("proc-macro") || kind.includes("custom-build"));
  if (linked.has(id) || runsWhileCompiling) continue;
  linked.set(id, held);
  for (const dep of nodes.get(id).deps) {
    if (dep.dep_kinds.some(({ kind }) => kind === null)) open.push(dep.pkg);
  }
}

const isText = (name) => /^(un)?licen[cs]e|^copying|^notice|^copyright/i.test(name);
const textsIn = (place) =>
  readdirSync(place, { withFileTypes: true })
    .filter((entry) => entry.isFile() && isText(entry.name))
    .map((entry) => readFileSync(join(place, entry.name), "utf8").replaceAll("\r", "").trim());

// Each text with the names of those it is of.
const texts = new Map();
const without = [];
const add = (name, found, authors = []) => {
  if (found.length === 0) without.push([name, ...authors].join(", "));
  for (const text of found) texts.set(text, [...(texts.get(text) ?? []), name]);
};
for (const { name, version, license, authors, source, manifest_path } of [...linked.values()].sort((a, b) => (a.name < b.name ? -1 : 1))) {
  // What has no source is the project's own, whose license stands first.
  if (source) add(`${name} ${version} (${license})`, textsIn(dirname(manifest_path)), authors);
}
const ofLibrary = dirname(library);
const { name, version, license } = JSON.parse(readFileSync(join(ofLibrary, "package.json"), "utf8"));
add(`${name} ${version} (${license})`, textsIn(ofLibrary));
add("Atkinson Hyperlegible Next, the typeface (OFL-1.1)", [readFileSync("styles/fonts/OFL.txt", "utf8").replaceAll("\r", "").trim()]);
if (linked.size < 20) throw new Error("hardly anything was found that the page is made of");

const line = "-".repeat(80);
const parts = [
  readFileSync("LICENSE", "utf8").trim(),
  "It is made with the libraries below, and with the standard library of Rust (MIT or Apache-2.0), under their own licenses.",
];
for (const [text, names] of texts) parts.push(`${line}\n${names.join("\n")}\n${line}`, text);
if (without.length > 0) {
  parts.push(`${line}\nThese name their license and bring no text of it; it is among the texts above. Their authors stand behind them.\n${without.join("\n")}\n${line}`);
}
writeFileSync(join(folder, "licenses.txt"), parts.join("\n\n") + "\n");
