//! Plans as addresses, by the command line and by length.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

use hobnail_core::exchange::{address, plan_file};
use hobnail_core::plan::{Alternative, AlternativeId, Document, Mark, MarkId};

fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(name)
}

fn hobnail(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_hobnail"))
        .args(arguments)
        .output()
        .unwrap()
}

fn sample_path(name: &str) -> String {
    let path = folder("sample-sketches").join(name).with_extension("geojson");
    path.to_str().unwrap().to_owned()
}

fn sample(name: &str) -> Document {
    plan_file::read(&std::fs::read(sample_path(name)).unwrap())
        .unwrap()
        .document
}

/// The samples, and the letters that the minified plan file takes after deflate in base64url.
///
/// Measured on 2026-11-29 by Python 3's `zlib.compressobj(9, DEFLATED, -15)` over `json.dumps` without blanks.
const SAMPLES: [(&str, usize); 4] = [
    ("compact-village", 14_818),
    ("blank-site", 7_962),
    ("conventional-subdivision", 12_007),
    ("repaired-strip", 16_368),
];

#[test]
fn an_exported_sample_opens_as_the_file_it_was() {
    for (name, _) in SAMPLES {
        let told = hobnail(&["export", &sample_path(name), "--to", "address"]);
        assert_eq!(told.status.code(), Some(0), "{name}");
        assert!(told.stderr.is_empty(), "{name}: nothing is left out of it");
        let text = String::from_utf8(told.stdout).unwrap();
        let opened = hobnail(&["open", text.trim_end()]);
        assert_eq!(opened.status.code(), Some(0), "{name}");
        assert!(
            opened.stdout == std::fs::read(sample_path(name)).unwrap(),
            "{name} came back as another"
        );
    }
}

#[test]
fn samples_take_few_letters() {
    let mut table = String::new();
    for (name, deflated) in SAMPLES {
        let letters = address::encode(&sample(name)).unwrap().text.len();
        table += &format!("{name}: {letters} letters, {deflated} for the deflated plan file\n");
        assert!(letters * 28 <= deflated * 10, "{table}");
    }
    let village = address::encode(&sample("compact-village")).unwrap().text.len();
    assert!(village <= 1_500, "{table}");
}

/// The village with its ids raised, as a copied alternative has them, and edited here and there.
fn edited(first: &Alternative) -> Alternative {
    let raised = |id: MarkId| MarkId(id.0 + 1_000);
    let mut copy = Alternative {
        name: "Narrower streets".to_owned(),
        ..Alternative::default()
    };
    for (number, (id, mark)) in first.marks.iter().enumerate() {
        let mut mark = mark.clone();
        match &mut mark {
            Mark::Street(street) => {
                for vertex in &mut street.line {
                    if let Some(tie) = &mut vertex.tie {
                        tie.street = raised(tie.street);
                    }
                }
                if number % 5 == 0 {
                    street.section = hobnail_core::plan::StreetSectionId(3);
                }
                if number % 7 == 0 {
                    street.name.push_str(" North");
                }
            }
            Mark::Use(held) => {
                held.sides.iter_mut().for_each(|side| side.street = raised(side.street));
                if number % 3 == 0 {
                    held.land_m2 += 90 + number as u32;
                }
            }
            _ => {}
        }
        if number % 29 != 28 || matches!(mark, Mark::Street(_)) {
            copy.marks.insert(raised(*id), mark);
        }
    }
    copy
}

#[test]
fn a_further_alternative_takes_few_letters() {
    let mut document = sample("compact-village");
    let alone = address::encode(&document).unwrap().text.len();
    let first = document.alternatives[&AlternativeId(0)].clone();
    document.alternatives.insert(AlternativeId(1), edited(&first));
    let told = address::encode(&document).unwrap().text;
    assert!(told.len() <= alone + 900, "{alone}, then {}", told.len());
    assert_eq!(address::decode(&told).unwrap().document, document);
}

#[test]
fn what_is_left_out_is_told_when_made_and_when_opened() {
    let path = folder("tests/fixtures/plan_file/version_1.geojson");
    let told = hobnail(&[
        "export",
        path.to_str().unwrap(),
        "--to",
        "address",
        "--base",
        "https://example.org/",
    ]);
    assert_eq!(told.status.code(), Some(0));
    let said = String::from_utf8(told.stderr).unwrap();
    assert!(said.contains("Ground heights are not in the address"), "{said}");
    assert!(said.contains("The base image is not in the address"), "{said}");
    let text = String::from_utf8(told.stdout).unwrap();
    assert!(text.starts_with("https://example.org/#plan=1"), "{text}");
    let mut open = Command::new(env!("CARGO_BIN_EXE_hobnail"))
        .args(["open", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    open.stdin.take().unwrap().write_all(text.as_bytes()).unwrap();
    let opened = open.wait_with_output().unwrap();
    assert_eq!(opened.status.code(), Some(0));
    let said = String::from_utf8(opened.stderr).unwrap();
    assert!(said.contains("walking times are those on the flat"), "{said}");
    let mut expected = plan_file::read(&std::fs::read(path).unwrap()).unwrap().document;
    (expected.topography, expected.base_image) = (None, None);
    assert_eq!(plan_file::read(&opened.stdout).unwrap().document, expected);
}

#[test]
fn what_can_not_be_exported_or_opened_is_said_with_code_2() {
    let check = |arguments: &[&str], words: &str| {
        let run = hobnail(arguments);
        let said = String::from_utf8_lossy(&run.stderr).into_owned();
        assert_eq!(run.status.code(), Some(2), "{arguments:?}: {said}");
        assert!(said.contains(words), "{arguments:?}: {said}");
        assert!(run.stdout.is_empty(), "{arguments:?}");
    };
    let village = sample_path("compact-village");
    check(&["export", &village], "to what?");
    check(&["export", &village, "--to", "paper"], "there is no paper");
    check(
        &["export", "no-such-plan.geojson", "--to", "address"],
        "can not be read",
    );
    check(&["open"], "which address?");
    check(&["open", "1abcd"], "the address is damaged");
    check(&["open", "3abcd"], "newer version");
    check(&["open", "#figures"], "something else");
    check(&["open", "1abcd", "--language", "es"], "la dirección está dañada");
}

#[test]
fn help_says_what_the_commands_take() {
    for (command, words) in [("export", "--base URL"), ("open", "behind the #")] {
        let run = hobnail(&[command, "--help"]);
        assert_eq!(run.status.code(), Some(0));
        assert!(String::from_utf8(run.stdout).unwrap().contains(words), "{command}");
    }
}
