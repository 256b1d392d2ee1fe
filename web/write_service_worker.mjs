// Run by trunk after each build (Trunk.toml): writes the service worker into the built folder, with the files it keeps.
import { createHash } from "node:crypto";
import { readFileSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const NAME = "service_worker.js";
// For people who look into the folder, or made after the build.
const NOT_KEPT = [".md", "OFL.txt", NAME, "hobnail.html"];

const folder = process.env.TRUNK_STAGING_DIR;
if (!folder) throw new Error("trunk says in TRUNK_STAGING_DIR what it built");
const sha256 = (bytes) => createHash("sha256").update(bytes).digest("hex");
const files = {};
for (const path of readdirSync(folder, { recursive: true }).sort()) {
  const isFile = statSync(join(folder, path)).isFile();
  if (!isFile || NOT_KEPT.some((ending) => path.endsWith(ending))) continue;
  // The page itself is asked for by the folder's address.
  files[path === "index.html" ? "./" : path.replaceAll("\\", "/")] = sha256(readFileSync(join(folder, path)));
}
const worker = readFileSync(new URL(NAME, import.meta.url), "utf8");
const list = JSON.stringify(files, null, 2);
const version = sha256(list + worker).slice(0, 16);
writeFileSync(join(folder, NAME), `const version = "${version}";\nconst files = ${list};\n${worker}`);
