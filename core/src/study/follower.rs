//! The study in the worker: it follows the one on the main thread and answers what takes longer than a frame.

use super::Study;
use super::jobs::answer;
use super::protocol::{Change, NewsFault, Reply, Request};
use crate::plan::Document;
use crate::plan::projection::GeographicPoint;

/// Where a plan lies that is only there to be replaced.
const NOWHERE: GeographicPoint = GeographicPoint {
    longitude_ndeg: 0,
    latitude_ndeg: 0,
};

/// A second study fed with the news of the first.
#[derive(Debug, Default)]
pub struct Follower {
    study: Option<Study>,
}

impl Follower {
    /// Takes up the news, then answers each question, handing every reply to `reply` as soon as it is there.
    pub fn handle(&mut self, request: Request, mut reply: impl FnMut(Reply)) {
        let Request { news, questions } = request;
        let revision = news.revision;
        let held = match (self.study.take(), &news.change) {
            (Some(study), _) => Ok(study),
            // The plan that is open at first gives way to the one told.
            (None, Change::Whole(_)) => Study::open(Document::new("", NOWHERE)),
            (None, Change::Edits(_)) => return reply(Reply::OutOfStep),
        };
        let mut study = match held {
            Ok(study) => study,
            Err(fault) => return reply(Reply::Failed(fault.to_string())),
        };
        match study.take_up(news) {
            Ok(()) => {}
            // It is not what the other speaks of: it goes, and the whole document is asked for.
            Err(NewsFault::DoesNotFollow(_)) => return reply(Reply::OutOfStep),
            Err(fault @ NewsFault::Unreadable) => return reply(Reply::Failed(fault.to_string())),
        }
        let study = self.study.insert(study);
        for question in &questions {
            reply(Reply::Answer {
                revision,
                answer: answer(study, question),
            });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::Edit;
    use crate::plan::document::Heading;
    use crate::study::protocol::{Answer, Question};

    fn renamed(study: &Study, name: &str) -> Vec<Edit> {
        let before = study.document().heading.clone();
        vec![Edit::Heading {
            after: Heading {
                name: name.to_owned(),
                ..before.clone()
            },
            before,
        }]
    }

    fn ask(study: &mut Study, follower: &mut Follower) -> Vec<Reply> {
        let news = study.take_news().unwrap();
        let questions = vec![Question::Range("homes.count".to_owned())];
        let mut replies = Vec::new();
        follower.handle(Request { news, questions }, |reply| replies.push(reply));
        replies
    }

    #[test]
    fn a_follower_holds_what_it_is_told_and_says_when_it_lost_step() {
        let mut study = Study::open(Document::new(
            "First",
            GeographicPoint {
                longitude_ndeg: 0,
                latitude_ndeg: 0,
            },
        ))
        .unwrap();
        let mut follower = Follower::default();
        for name in ["First", "Second", "Third"] {
            study.apply("Rename", renamed(&study, name)).unwrap();
            let replies = ask(&mut study, &mut follower);
            let Some(Reply::Answer {
                revision,
                answer: Answer::Range { shown, .. },
            }) = replies.first()
            else {
                panic!("{replies:?}")
            };
            assert_eq!(
                (*revision, shown.as_slice()),
                (study.revision(), &["0 homes".to_owned()][..])
            );
            assert_eq!(follower.study.as_ref().unwrap().document(), study.document());
        }
        study.undo().unwrap();
        ask(&mut study, &mut follower);
        assert_eq!(follower.study.as_ref().unwrap().document(), study.document());

        study.apply("Rename", renamed(&study, "Unheard")).unwrap();
        let _lost = study.take_news();
        study.apply("Rename", renamed(&study, "Heard")).unwrap();
        assert_eq!(ask(&mut study, &mut follower), [Reply::OutOfStep]);
        study.send_whole();
        assert!(matches!(ask(&mut study, &mut follower)[..], [Reply::Answer { .. }]));
        assert_eq!(follower.study.as_ref().unwrap().document(), study.document());
    }
}
