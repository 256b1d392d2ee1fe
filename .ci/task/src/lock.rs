//! Reading a version out of Cargo.lock.

/// The version of the package `name` in the text of a Cargo.lock; `None` when it is not there.
///
/// An error when it is there in several versions, since then no one of them is *the* version.
pub fn version(lock: &str, name: &str) -> Result<Option<String>, String> {
    let mut versions = Vec::new();
    for package in lock.split("[[package]]").skip(1) {
        if field(package, "name") == Some(name) {
            let version = field(package, "version").ok_or(format!("Cargo.lock has `{name}` without a version"))?;
            versions.push(version.to_string());
        }
    }
    match versions.as_slice() {
        [] => Ok(None),
        [version] => Ok(Some(version.clone())),
        several => Err(format!(
            "Cargo.lock has `{name}` {} times: {}",
            several.len(),
            several.join(", ")
        )),
    }
}

/// The text of `key = "text"` among the lines of one package.
fn field<'a>(package: &'a str, key: &str) -> Option<&'a str> {
    package
        .lines()
        .find_map(|line| line.strip_prefix(key)?.strip_prefix(" = \"")?.strip_suffix('"'))
}

#[cfg(test)]
mod tests {
    use super::*;

    const LOCK: &str = r#"
version = 4

[[package]]
name = "wasm-bindgen"
version = "0.2.130"
dependencies = [
 "cfg-if",
]

[[package]]
name = "wasm-bindgen-test"
version = "0.3.80"

[[package]]
name = "syn"
version = "2.0.119"

[[package]]
name = "syn"
version = "3.0.10"
"#;

    #[test]
    fn a_name_is_matched_whole() {
        assert_eq!(version(LOCK, "wasm-bindgen"), Ok(Some("0.2.130".to_string())));
        assert_eq!(version(LOCK, "wasm-bindgen-test"), Ok(Some("0.3.80".to_string())));
        assert_eq!(version(LOCK, "wasm"), Ok(None));
        assert_eq!(version(LOCK, "cfg-if"), Ok(None));
    }

    #[test]
    fn two_versions_are_a_fault() {
        assert_eq!(
            version(LOCK, "syn"),
            Err("Cargo.lock has `syn` 2 times: 2.0.119, 3.0.10".to_string())
        );
    }

    #[test]
    fn the_lock_beside_us_has_the_bindings() {
        let lock = include_str!("../../../Cargo.lock");
        assert!(version(lock, "wasm-bindgen").unwrap().is_some());
    }
}
