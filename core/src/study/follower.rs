//! The study in the worker: it follows the one on the main thread and answers what takes longer than a frame.

use super::Study;
use super::jobs::answer;
use super::protocol::{Change, Reply, Request};
use crate::plan::Document;
use crate::plan::projection::GeographicPoint;

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
        let study = match (self.study.take(), news.change) {
            (Some(mut study), change) => {
                let news = super::protocol::News { change, ..news };
                if study.take_up(news).is_err() {
                    // It is not what the other speaks of: it goes, and the whole document is asked for.
                    return reply(Reply::OutOfStep);
                }
                study
            }
            (None, Change::Whole(text)) => {
                // The plan that is open at first gives way to the one told.
                let nowhere = GeographicPoint {
                    longitude_ndeg: 0,
                    latitude_ndeg: 0,
                };
                let news = super::protocol::News {
                    change: Change::Whole(text),
                    ..news
                };
                match Study::open(Document::new("", nowhere)) {
                    Ok(mut study) => match study.take_up(news) {
                        Ok(()) => study,
                        Err(fault) => return reply(Reply::Failed(fault.to_string())),
                    },
                    Err(fault) => return reply(Reply::Failed(fault.to_string())),
                }
            }
            (None, Change::Edits(_)) => return reply(Reply::OutOfStep),
        };
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
