//! What was worked out last, kept for whoever asks for the same again.

use std::collections::VecDeque;
use std::sync::{Arc, Mutex, PoisonError};

/// The last few of something that is worked out, each by a key that says all that it follows from.
#[derive(Debug)]
pub struct Kept<T> {
    most: usize,
    last: Mutex<VecDeque<(String, Entry<T>)>>,
}

type Entry<T> = Arc<Mutex<Option<Arc<T>>>>;

impl<T> Kept<T> {
    /// Nothing yet, and never more than so many.
    pub fn at_most(most: usize) -> Kept<T> {
        Kept {
            most,
            last: Mutex::default(),
        }
    }

    /// What goes by a key: as it was kept, or worked out now. Who asks for it while another works
    /// it out waits for that one; who asks for something else does not.
    pub fn of(&self, key: String, work: impl FnOnce() -> T) -> Arc<T> {
        let worked = self.try_of(key, || Ok::<T, std::convert::Infallible>(work()));
        worked.unwrap_or_else(|never| match never {})
    }

    /// As [`Kept::of`], of something that may come to nothing, which is not kept.
    ///
    /// # Errors
    ///
    /// That of the work.
    pub fn try_of<E>(&self, key: String, work: impl FnOnce() -> Result<T, E>) -> Result<Arc<T>, E> {
        let entry = self.entry(key);
        let mut kept = entry.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(kept) = kept.as_ref() {
            return Ok(Arc::clone(kept));
        }
        let worked = Arc::new(work()?);
        *kept = Some(Arc::clone(&worked));
        Ok(worked)
    }

    fn entry(&self, key: String) -> Entry<T> {
        let mut last = self.last.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((_, entry)) = last.iter().find(|(known, _)| *known == key) {
            return Arc::clone(entry);
        }
        if last.len() >= self.most {
            last.pop_front();
        }
        let entry = Entry::default();
        last.push_back((key, Arc::clone(&entry)));
        entry
    }
}

#[cfg(test)]
mod tests {
    use super::Kept;

    #[test]
    fn the_same_is_worked_out_once_and_the_oldest_is_forgotten() {
        let kept = Kept::at_most(2);
        let mut worked = Vec::new();
        for key in ["a", "a", "b", "a", "c", "a"] {
            let got = kept.of(key.to_owned(), || {
                worked.push(key);
                key.len()
            });
            assert_eq!(*got, 1);
        }
        assert_eq!(worked, ["a", "b", "c", "a"]);
    }
}
