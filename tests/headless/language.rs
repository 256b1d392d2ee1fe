//! The command line in another language: its words change, its codes, ids and numbers do not.

use std::path::Path;
use std::process::Command;

use serde_json::Value;

/// Exit code, standard output and standard error.
fn run(words: &[&str]) -> (Option<i32>, String, String) {
    let run = Command::new(env!("CARGO_BIN_EXE_hobnail"))
        .args(words)
        .output()
        .unwrap();
    (
        run.status.code(),
        String::from_utf8(run.stdout).unwrap(),
        String::from_utf8(run.stderr).unwrap(),
    )
}

fn sample(name: &str) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-sketches");
    folder
        .join(name)
        .with_extension("geojson")
        .to_string_lossy()
        .into_owned()
}

#[test]
fn a_plan_is_measured_in_spanish() {
    let subdivision = sample("conventional-subdivision");
    let (code, told, faults) = run(&["--language", "es", "measure", &subdivision]);
    assert_eq!((code, faults.as_str()), (Some(0), ""));
    for part in [
        "\nnota: ",
        "pregunte al jefe de prevención de incendios",
        " pies al oeste, ",
        "; marca ",
    ] {
        assert!(told.contains(part), "no `{part}` in:\n{told}");
    }
    assert!(!told.contains("ask the"), "{told}");
    let village = sample("compact-village");
    let (code, told, _) = run(&["measure", &village, "--without", "public,willing", "--language", "es"]);
    assert_eq!(code, Some(0));
    let heading = "(sin el suelo de propietarios públicos y dispuestos)\n";
    assert!(told.contains(heading), "{told}");
}

#[test]
fn data_is_the_same_in_every_language() {
    let village = sample("compact-village");
    let figures = |language: &str| -> Vec<(Value, Value)> {
        let (code, told, _) = run(&["measure", &village, "--json", "--language", language]);
        assert_eq!(code, Some(0));
        let report: Value = serde_json::from_str(&told).unwrap();
        let figures = report["figures"].as_array().unwrap().iter();
        figures
            .map(|figure| (figure["id"].clone(), figure["value"].clone()))
            .collect()
    };
    let english = figures("en");
    assert!(english.iter().any(|(_, value)| value.is_number()), "{english:?}");
    assert_eq!(figures("es"), english);
}

#[test]
fn what_is_wrong_is_said_in_the_language_asked_for() {
    let check = |words: &[&str], expected: &str| {
        let (code, told, said) = run(words);
        assert_eq!((code, told.as_str()), (Some(2), ""), "{words:?}: {said}");
        assert!(said.contains(expected), "{words:?}: {said}");
    };
    check(&["--language", "es"], "uso: hobnail measure PLAN.geojson [opciones]");
    check(
        &["measure", "--language", "es-419"],
        "hobnail measure: ¿cuál plan? nombre un archivo, o - para la entrada estándar\n\nuso: ",
    );
    check(
        &["--language", "es", "network", "no-such-file.geojson"],
        "no-such-file.geojson: no se puede leer: ",
    );
    check(
        &["--language", "es", "network", "s", "--fast"],
        "no existe la opción --fast",
    );
    // The last language counts.
    check(&["--language", "es", "--language", "en"], "usage: ");
    check(
        &["--language", "tlh"],
        "hobnail: --language: there is no tlh; there are: en, es\n",
    );
    check(&["measure", "--language"], "hobnail: --language needs a value\n");
}

#[test]
fn help_speaks_the_language_and_says_how_to_choose_it() {
    for command in [&["--help"][..], &["measure", "--help"], &["network", "--help"]] {
        for (language, usage) in [("en", "usage: "), ("es", "uso: ")] {
            let (code, told, said) = run(&[command, &["--language", language]].concat());
            assert_eq!((code, said.as_str()), (Some(0), ""));
            assert!(told.starts_with(usage) && told.contains("--language"), "{told}");
        }
    }
    // A line that goes on keeps its place under the first.
    let (_, told, _) = run(&["measure", "--help"]);
    assert!(told.contains("\n                       [--json] "), "{told}");
}
