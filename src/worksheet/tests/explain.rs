//! Is what `?` says more than what is shown anyway, and true?

use super::*;

/// Every question of a walk, with what `?` says of it; which questions come up as in `says`.
fn explained(says: &[(String, String)]) -> Vec<(Prompt, String)> {
    let mut dialogue = Dialogue::default();
    let mut all = Vec::new();
    while let Some(prompt) = dialogue.prompt() {
        let said = dialogue.answer("?").unwrap().unwrap();
        assert_eq!(dialogue.prompt().unwrap().number, prompt.number);
        let list = prompt.takes.contains("nothing more");
        let line = says.iter().find(|(number, _)| *number == prompt.number);
        let line = match line {
            Some((_, line)) if !list || prompt.what.contains(" 1: ") => line.as_str(),
            _ if list => "none",
            _ => "",
        };
        all.push((prompt, said));
        dialogue.answer(line).unwrap();
    }
    all
}

#[test]
fn a_question_mark_repeats_nothing_and_says_so_where_there_is_nothing_more() {
    let all = explained(&full());
    assert!(all.len() > 100);
    for (prompt, said) in &all {
        for shown in [prompt.how, &prompt.what, &prompt.takes] {
            // A single short word, such as a kind, may come up again.
            assert!(
                shown.len() < 12 || !said.contains(shown),
                "{prompt:?}: {said}"
            );
        }
    }
    let of_key = |section: &str, key: &str| {
        let number = of(section, key);
        let found = all.iter().find(|(prompt, _)| prompt.number == number);
        found.unwrap().1.as_str()
    };
    for key in ["title", "units", "#measured"] {
        assert_eq!(of_key("start", key), "There is nothing more to say of it.");
    }
    let radius = of_key("door", "garage.door.track_radius");
    assert!(
        radius.starts_with("There is nothing more to say of it. Left empty, no lock"),
        "{radius}"
    );
    assert!(of_key("door", "#door").starts_with("Roll-up: a curtain"));
    assert!(!of_key("door", "#door").contains("nothing more"));
}

/// What is said of an empty answer is what the file then holds.
#[test]
fn what_is_said_of_an_empty_answer_is_what_becomes_of_it() {
    let all = measured();
    let said = explained(&all);
    let [mut withheld, mut told] = [0, 0];
    for section in sections().iter().filter(|one| one.repeat.is_none()) {
        for question in section.questions {
            let number = of(section.id, question.key);
            let Some((_, said)) = said.iter().find(|(prompt, _)| prompt.number == number) else {
                continue;
            };
            let mut without = all.clone();
            without.retain(|(one, _)| *one != number);
            let made = made_of(&without);
            let label = label(question.key);
            if said.contains("no lock is called safe") {
                assert!(!made.not_measured.is_empty(), "{number}");
                withheld += 1;
            } else {
                let listed = made.not_measured.iter().any(|one| one.starts_with(&label));
                assert!(!listed, "{number} withholds, and nobody said so: {said}");
            }
            if said.contains("told as not known") {
                assert!(made.not_known.contains(&label), "{number}");
                told += 1;
            }
        }
    }
    assert!(withheld > 80 && told > 4, "{withheld} {told}");
}
