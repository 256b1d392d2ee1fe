//! A page of a few letters, put into one file.

use super::*;

/// Packs in a way that a person can read.
struct Readable;

impl Packer for Readable {
    fn base64(&self, bytes: &[u8]) -> Result<String, String> {
        Ok(format!("base64-{}", String::from_utf8_lossy(bytes)))
    }

    fn gzip_in_base64(&self, bytes: &[u8]) -> Result<String, String> {
        Ok(format!("gzip-{}", String::from_utf8_lossy(bytes)))
    }

    fn sha256_in_base64(&self, text: &str) -> Result<String, String> {
        Ok(format!("hash-of-{}-bytes", text.len()))
    }
}

const INDEX: &str = r#"<!doctype html>
<html>
  <head>
    <!-- A <link that is none. -->
    <meta http-equiv="Content-Security-Policy" content="default-src 'self'">
    <link rel="icon" type="image/svg+xml" href="./icon.svg">
    <link rel="manifest" href="./hobnail.webmanifest">
    <link rel="stylesheet" href="./page-1.css" data-integrity="none"/>
    <script type="module" src="./start.js" data-module="./page-2.js" data-wasm="./page-2_bg.wasm"></script>
  <link rel="modulepreload" href="./page-2.js"><link rel="preload" href="./page-2_bg.wasm" as="fetch"></head>
  <body>
    <p>Loading</p>
  </body>
</html>
"#;

const LOADER: &str =
    "export class Stream {}\nfunction start() {\n    import.meta.url\n}\nexport { startSync, start as default };";

fn page() -> Sources<'static> {
    let files = [
        ("fonts/OFL.txt", "Anyone may use it.\r\n"),
        ("fonts/plain.woff2", "letters"),
        ("hobnail.webmanifest", "manifest"),
        ("icon.svg", "nail"),
        ("icon_512.png", "pixels"),
        ("index.html", INDEX),
        ("page-1.css", "@font-face { src: url(\"./fonts/plain.woff2\") }"),
        ("page-2.js", LOADER),
        ("page-2_bg.wasm", "module"),
        ("reading.js", "read();"),
        ("sample-sketches/README.md", "about"),
        ("sample-sketches/village.geojson", "village"),
        ("service_worker.js", "worker"),
        ("start.js", "start"),
        ("words.js", "say();"),
        ("worker.js", "worker"),
    ];
    Sources {
        start: "begin();\n".to_string(),
        address: None,
        files: files
            .map(|(name, text)| (name.to_string(), text.as_bytes().to_vec()))
            .into(),
    }
}

fn set(sources: &mut Sources<'_>, path: &str, text: &str) {
    sources.files.retain(|(name, _)| name != path);
    sources.files.push((path.to_string(), text.as_bytes().to_vec()));
}

/// The text between a tag that contains `within` and the end of its element.
fn element<'a>(html: &'a str, within: &str, name: &str) -> &'a str {
    let (_, after) = html
        .split_once(within)
        .unwrap_or_else(|| panic!("{within} is not in {html}"));
    let (_, text) = after.split_once('>').unwrap();
    text.split_once(&format!("</{name}>")).unwrap().0
}

#[test]
fn everything_stands_inside() {
    let html = assemble(&page(), &Readable).unwrap();
    assert_eq!(
        element(&html, "<style", "style"),
        "/*\nAnyone may use it.\n*/\n@font-face { src: url(\"data:font/woff2;base64,base64-letters\") }"
    );
    assert_eq!(
        element(&html, "data-start", "script"),
        "say();\nread();\n(() => {\n\"use strict\";\nconst loaders = {};\nloaders[\"page-2_bg.wasm\"] = (() => {\nclass Stream {}\nfunction start() {\n    self.location.href\n}\n\
         return Object.assign(start, { Stream });\n})();\nconst own = \"page-2_bg.wasm\";\nbegin();\n})();\n"
    );
    assert_eq!(element(&html, "data-file=\"page-2_bg.wasm\"", "script"), "gzip-module");
    assert_eq!(
        element(&html, "data-file=\"sample-sketches/village.geojson\"", "script"),
        "gzip-village"
    );
    assert_eq!(html.matches("data-file").count(), 2);
    for gone in [
        "./",
        "stylesheet",
        "preload",
        "manifest",
        "pixels",
        "'self'",
        "hobnail-address",
    ] {
        assert!(!html.contains(gone), "{gone} is still in {html}");
    }
    assert!(html.contains("<link rel=\"icon\" href=\"data:image/svg+xml;base64,base64-nail\">"));
}

#[test]
fn the_policy_names_what_stands_inside_by_its_hash() {
    let html = assemble(&page(), &Readable).unwrap();
    let script = element(&html, "data-start", "script").len();
    let style = element(&html, "<style", "style").len();
    assert!(
        html.contains(&format!(
            "content=\"default-src 'none'; script-src 'sha256-hash-of-{script}-bytes' 'wasm-unsafe-eval'; \
             style-src 'sha256-hash-of-{style}-bytes'; font-src data:;"
        )),
        "{html}"
    );
    assert!(!html.contains("unsafe-inline") && !html.contains("connect-src"));
    let policy = html.find("Content-Security-Policy").unwrap();
    assert!(
        policy < html.find("<style").unwrap(),
        "a policy holds for what comes after it"
    );
}

#[test]
fn an_address_is_written_for_the_page_to_read() {
    let sources = Sources {
        address: Some("https://example.org/?a=1&b=2"),
        ..page()
    };
    let html = assemble(&sources, &Readable).unwrap();
    let line = "<meta name=\"hobnail-address\" content=\"https://example.org/?a=1&amp;b=2\">";
    assert!(html.contains(line), "{html}");
}

#[test]
fn a_second_module_is_packed_like_the_first() {
    let mut sources = page();
    set(&mut sources, "readers_bg.wasm", "readers");
    set(
        &mut sources,
        "readers.js",
        "function load() {}\nexport { load as default };",
    );
    let html = assemble(&sources, &Readable).unwrap();
    let loader =
        "loaders[\"readers_bg.wasm\"] = (() => {\nfunction load() {}\nreturn Object.assign(load, {  });\n})();";
    assert!(html.contains(loader), "{html}");
    assert_eq!(
        element(&html, "data-file=\"readers_bg.wasm\"", "script"),
        "gzip-readers"
    );
    assert!(html.contains("const own = \"page-2_bg.wasm\";"));
}

#[test]
fn what_would_need_another_file_is_refused() {
    let fault = |path: &str, text: &str| {
        let mut sources = page();
        set(&mut sources, path, text);
        assemble(&sources, &Readable).expect_err(text)
    };
    assert!(fault("page-2.js", "import { a } from './b.js';\n").contains("need another file"));
    assert!(fault("page-2.js", "let a = import('./b.js');\nexport { a as default };").contains("need another file"));
    assert!(fault("page-2.js", "export function a() {}").contains("no default export"));
    assert!(fault("page-1.css", "p { background: url(\"./wood.jpeg\") }").contains("no place"));
    assert!(fault("page-1.css", "p { background: url(wood.svg) }").contains("not understood"));
    assert!(fault("page-1.css", "@import \"more.css\";").contains("not understood"));
    assert!(fault("index.html", &INDEX.replace("\"icon\"", "\"alternate\"")).contains("kind `alternate`"));
    assert!(fault("index.html", &INDEX.replace("page-1.css", "page-9.css")).contains("no file page-9.css"));
    assert!(fault("index.html", &INDEX.replace("<meta http-equiv", "<meta name")).contains("no policy"));
}

#[test]
fn text_that_would_end_its_element_is_refused() {
    for text in ["a </Script> b", "a <!-- b", "a <script b", "a\r\nb", "a\0b"] {
        let mut sources = page();
        set(&mut sources, "page-2.js", &format!("{text}\n{LOADER}"));
        // Line ends are the one thing that is made whole on the way.
        if !text.contains('\r') {
            assert!(assemble(&sources, &Readable).is_err(), "{text:?}");
        }
        assert!(
            write_element(&mut String::new(), "script", "", text).is_err(),
            "{text:?}"
        );
    }
}
