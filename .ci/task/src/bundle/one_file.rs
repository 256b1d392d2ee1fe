//! The page's files put into one: what stands where, and what its policy allows.
//!
//! - The style sheet stands inside, its fonts as `data:` addresses, with the fonts' licenses before it.
//! - One script stands inside: what says messages, what reads base data, the loader of each wasm module, as wasm-bindgen wrote it but for its
//!   exports, and behind them `web/one_file.js`. The worker is started from this script's own text, so nothing stands there twice.
//! - All other files, wasm modules and sample sketches above all, stand before it, compressed, each in a script element
//!   of a type that no browser runs. A second wasm module beside the page's own is found and packed like the first.
//! - The policy names style and script by their hashes and allows nothing else but what is made inside the file.

use std::fmt::Write as _;

/// What the file is made of.
pub struct Sources<'a> {
    /// The text of `web/one_file.js`.
    pub start: String,
    /// Where the page is to be found, if that is known.
    pub address: Option<&'a str>,
    /// The files of the built page by their paths, `index.html` among them.
    pub files: Vec<(String, Vec<u8>)>,
}

/// What the language does not bring: compressing, hashing, base64.
pub trait Packer {
    /// The bytes in base64.
    fn base64(&self, bytes: &[u8]) -> Result<String, String>;
    /// The bytes compressed as gzip does (RFC 1952), in base64.
    fn gzip_in_base64(&self, bytes: &[u8]) -> Result<String, String>;
    /// The SHA-256 of the text's UTF-8, in base64.
    fn sha256_in_base64(&self, text: &str) -> Result<String, String>;
}

/// Files that only the page made of many files needs.
const LEFT_OUT: [&str; 12] = [
    "index.html",
    "start.js",
    "words.js",
    "reading.js",
    "worker.js",
    "new_version.js",
    "service_worker.js",
    "hobnail.webmanifest",
    "icon.svg",
    "icon_192.png",
    "icon_512.png",
    "icon_maskable.png",
];

/// Endings of files that are put in elsewhere, or are for people who look into the folder.
const NOT_PACKED: [&str; 4] = [".css", ".woff2", "OFL.txt", ".md"];

impl Sources<'_> {
    fn bytes(&self, path: &str) -> Result<&[u8], String> {
        let path = path.trim_start_matches("./");
        let found = self.files.iter().find(|(name, _)| name == path);
        let (_, bytes) = found.ok_or(format!("the built page has no file {path}"))?;
        Ok(bytes)
    }

    fn text(&self, path: &str) -> Result<&str, String> {
        std::str::from_utf8(self.bytes(path)?).map_err(|_| format!("{path} is no text"))
    }

    /// The wasm modules, each with the path of its loader: `x_bg.wasm` has `x.js`.
    fn modules(&self) -> Vec<(&str, String)> {
        let names = self.files.iter().map(|(name, _)| name.as_str());
        names
            .filter_map(|name| Some((name, format!("{}.js", name.strip_suffix("_bg.wasm")?))))
            .collect()
    }
}

/// The text of the one file.
pub fn assemble(sources: &Sources<'_>, packer: &dyn Packer) -> Result<String, String> {
    let index = sources.text("index.html")?;
    let mut html = String::new();
    let (mut policy_at, mut own) = (None, None);
    let mut styles = Vec::new();
    let mut rest = index;
    // Only elements of the head lead to other files, and trunk writes them in this form.
    while let Some((before, tag, after)) = next_tag(rest, &["<link", "<script", "<meta http-equiv"]) {
        html.push_str(before);
        rest = after;
        let address = attribute(tag, "href").unwrap_or_default();
        match attribute(tag, "rel") {
            Some("stylesheet") => {
                let style = style(sources, packer, address)?;
                write_element(&mut html, "style", "", &style)?;
                styles.push(style);
            }
            Some("modulepreload" | "preload" | "manifest") => {}
            Some("icon") => {
                let icon = packer.base64(sources.bytes(address)?)?;
                html.push_str(&format!(
                    "<link rel=\"icon\" href=\"data:image/svg+xml;base64,{icon}\">"
                ));
            }
            Some(kind) => return Err(format!("what is a link of kind `{kind}` to be in one file?")),
            None if tag.starts_with("<meta") => policy_at = Some(html.len()),
            None => {
                let module = attribute(tag, "data-wasm").ok_or(format!("what is {tag} to be in one file?"))?;
                own = Some(module.trim_start_matches("./"));
                rest = after
                    .strip_prefix("</script>")
                    .ok_or("a script that begins does not end")?;
            }
        }
    }
    html.push_str(rest);
    let own = own.ok_or("index.html starts no module")?;
    let script = script(sources, own)?;
    let mut end = String::new();
    pack(sources, packer, &mut end)?;
    write_element(&mut end, "script", " data-start", &script)?;
    let body_ends = html.rfind("</body>").ok_or("index.html has no end of its body")?;
    html.insert_str(body_ends, &end);
    let head = head(sources.address, &policy(packer, &script, &styles)?);
    html.insert_str(policy_at.ok_or("index.html has no policy")?, &head);
    Ok(html)
}

/// The policy, and the address if there is one.
fn head(address: Option<&str>, policy: &str) -> String {
    let mut head = format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">");
    if let Some(address) = address {
        // A string can always be written to.
        let _ = write!(
            head,
            "\n    <meta name=\"hobnail-address\" content=\"{}\">",
            escape(address)
        );
    }
    head
}

/// Everything is refused but this very script and style, fonts and pictures from inside the file, and workers.
fn policy(packer: &dyn Packer, script: &str, styles: &[String]) -> Result<String, String> {
    let script = packer.sha256_in_base64(script)?;
    let mut style_source = String::new();
    for style in styles {
        let hash = packer.sha256_in_base64(style)?;
        // A string can always be written to.
        let _ = write!(style_source, " 'sha256-{hash}'");
    }
    Ok(format!(
        "default-src 'none'; script-src 'sha256-{script}' 'wasm-unsafe-eval'; style-src{style_source}; font-src data:; \
         img-src data: blob:; worker-src blob:; base-uri 'none'; form-action 'none'"
    ))
}

/// The style sheet at this path, which needs no other file any more.
fn style(sources: &Sources<'_>, packer: &dyn Packer, path: &str) -> Result<String, String> {
    let sheet = sources.text(path)?;
    let mut style = String::new();
    // A font may be passed on with its license, which stands where a person who opens the file finds it.
    for (name, _) in &sources.files {
        if name.starts_with("fonts/") && name.ends_with(".txt") {
            let license = sources.text(name)?.replace('\r', "");
            if license.contains("*/") {
                return Err(format!("{name} can not stand in a comment"));
            }
            style.push_str(&format!("/*\n{}\n*/\n", license.trim_end()));
        }
    }
    let mut rest = sheet;
    while let Some((before, after)) = rest.split_once("url(\"") {
        let (address, after) = after
            .split_once("\")")
            .ok_or(format!("{path}: an address does not end"))?;
        style.push_str(before);
        let kind = match address.rsplit_once('.') {
            Some((_, "woff2")) => "font/woff2",
            Some((_, "svg")) => "image/svg+xml",
            _ => return Err(format!("{path} needs {address}, which has no place in one file")),
        };
        style.push_str(&format!(
            "url(\"data:{kind};base64,{}\")",
            packer.base64(sources.bytes(address)?)?
        ));
        rest = after;
    }
    style.push_str(rest);
    if style.matches("url(").count() != style.matches("url(\"data:").count() || style.contains("@import") {
        return Err(format!("{path} needs a file in a way that is not understood"));
    }
    Ok(style)
}

/// The script: what says messages, what reads base data, loaders, the name of the page's own module, and what starts it.
fn script(sources: &Sources<'_>, own: &str) -> Result<String, String> {
    let (words, reading) = (sources.text("words.js")?, sources.text("reading.js")?);
    let mut script = format!("{words}\n{reading}\n(() => {{\n\"use strict\";\nconst loaders = {{}};\n");
    for (module, loader) in sources.modules() {
        let text = wrapped(sources.text(&loader)?).map_err(|fault| format!("{loader}: {fault}"))?;
        script.push_str(&format!("loaders[\"{module}\"] = (() => {{\n{text}\n}})();\n"));
    }
    sources.bytes(own)?;
    script.push_str(&format!("const own = \"{own}\";\n{}}})();\n", sources.start));
    Ok(script)
}

/// A loader as the body of a function that gives its default export, with its classes as properties of that.
///
/// It is written as a module, which could not stand within a script; where it lies it would ask only to find a module
/// that it is not handed, and ours always are.
fn wrapped(loader: &str) -> Result<String, String> {
    let mut default = None;
    let mut classes = Vec::new();
    let mut lines = Vec::new();
    for line in loader.lines() {
        if line.starts_with("import ") || line.starts_with("import{") {
            return Err(format!("`{line}` would need another file"));
        }
        match line.strip_prefix("export ") {
            Some(names) if names.starts_with('{') => {
                let names = names.trim_matches(|letter: char| "{}; ".contains(letter)).split(',');
                default = names
                    .filter_map(|name| name.trim().strip_suffix(" as default"))
                    .next()
                    .or(default);
            }
            Some(declared) => {
                let class = declared.strip_prefix("class ");
                classes.extend(class.and_then(|class| class.split(' ').next()));
                lines.push(declared);
            }
            None => lines.push(line),
        }
    }
    let default = default.ok_or("it has no default export")?;
    let text = lines.join("\n").replace("import.meta.url", "self.location.href");
    if text.contains("import.meta") || text.contains("import(") {
        return Err("it would need another file".to_string());
    }
    let classes = classes.join(", ");
    Ok(format!("{text}\nreturn Object.assign({default}, {{ {classes} }});"))
}

/// Writes every other file, compressed, in an element of its own.
fn pack(sources: &Sources<'_>, packer: &dyn Packer, html: &mut String) -> Result<(), String> {
    let loaders: Vec<String> = sources.modules().into_iter().map(|(_, loader)| loader).collect();
    for (path, bytes) in &sources.files {
        let is_elsewhere = LEFT_OUT.contains(&path.as_str()) || loaders.contains(path);
        if is_elsewhere || NOT_PACKED.iter().any(|ending| path.ends_with(ending)) {
            continue;
        }
        let attributes = format!(" type=\"application/gzip\" data-file=\"{}\"", escape(path));
        write_element(html, "script", &attributes, &packer.gzip_in_base64(bytes)?)?;
    }
    Ok(())
}

/// Writes an element whose text a browser takes as it stands.
///
/// An error where it would not: where the text ends the element, or where a browser would change what is hashed.
fn write_element(html: &mut String, name: &str, attributes: &str, text: &str) -> Result<(), String> {
    let lower = text.to_ascii_lowercase();
    for forbidden in [&format!("</{name}"), "<!--", "<script", "\r", "\0"] {
        if lower.contains(forbidden) {
            return Err(format!("text with {forbidden:?} can not stand in a {name} element"));
        }
    }
    html.push_str(&format!("<{name}{attributes}>{text}</{name}>\n"));
    Ok(())
}

/// The first tag that begins with one of these: what is before it, the tag, what is behind it. Comments are before it.
fn next_tag<'a>(html: &'a str, beginnings: &[&str]) -> Option<(&'a str, &'a str, &'a str)> {
    let mut from = 0;
    loop {
        let rest = html.get(from..)?;
        let start = from + beginnings.iter().filter_map(|beginning| rest.find(beginning)).min()?;
        match rest.find("<!--").map(|comment| from + comment) {
            Some(comment) if comment < start => from = comment + html.get(comment..)?.find("-->")?,
            _ => {
                let end = start + html.get(start..)?.find('>')? + 1;
                return Some((html.get(..start)?, html.get(start..end)?, html.get(end..)?));
            }
        }
    }
}

/// The value of `name="value"` in a tag.
fn attribute<'a>(tag: &'a str, name: &str) -> Option<&'a str> {
    let (_, value) = tag.split_once(&format!(" {name}=\""))?;
    Some(value.split_once('"')?.0)
}

/// The text as it stands in an attribute.
fn escape(text: &str) -> String {
    text.replace('&', "&amp;").replace('"', "&quot;").replace('<', "&lt;")
}

#[cfg(test)]
mod tests;
