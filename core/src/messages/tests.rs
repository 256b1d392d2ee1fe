use super::*;

#[test]
fn a_message_is_said_in_the_language_of_the_thread() {
    assert_eq!(say!("language-name"), "English");
    use_language(Language::Spanish);
    assert_eq!(say!("language-name"), "Español");
    assert_eq!(say!("count-streets", count = 2_usize), "2 calles");
    assert_eq!(std::thread::spawn(|| say!("language-name")).join().unwrap(), "English");
    use_language(Language::English);
    assert_eq!(say!("language-name"), "English");
}

#[test]
fn a_count_chooses_its_form_and_is_written_plainly() {
    assert_eq!(say!("count-streets", count = 0), "0 streets");
    assert_eq!(say!("count-streets", count = 1), "1 street");
    assert_eq!(say!("count-streets", count = 12_345_u64), "12345 streets");
}

#[test]
fn what_lacks_an_argument_is_told_by_its_number() {
    let streets = message!("count-streets");
    assert_eq!(words_with(streets, "", &[]), format!("‹{}›", streets.place()));
    assert_eq!(find("no-such-message"), None);
    assert_eq!(find("language-name").as_deref(), Some("English"));
}

#[test]
fn messages_are_numbered_in_the_order_of_their_names() {
    assert!(IDS.is_sorted());
    for (place, id) in IDS.iter().enumerate() {
        assert_eq!(Message::named(id).place(), place);
    }
}

#[test]
fn another_speaker_is_asked_when_it_is_set() {
    speak_through(Speaker {
        say: |language, _, names, values| Some(format!("{} {names} {values:?}", language.code())),
        find: |_, id| Some(id.to_ascii_uppercase()),
    });
    assert_eq!(say!("language-name"), "en  []");
    use_language(Language::Spanish);
    assert_eq!(
        say!("count-streets", name = "b", count = 3_u8),
        r#"es name,count, [Text("b"), Count(3)]"#
    );
    assert_eq!(find("a").as_deref(), Some("A"));
}

#[test]
fn a_code_tells_the_language_whatever_the_region() {
    assert_eq!(Language::of_code("es-419"), Some(Language::Spanish));
    assert_eq!(Language::of_code("en"), Some(Language::English));
    assert_eq!(Language::of_code("est"), None);
}
