//! The message files of each language, read once.

use std::borrow::Cow;
use std::sync::LazyLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource};

use crate::words::exchanged::in_american;
use crate::words::spaced::in_french;

/// What is done to the text of a message, and not to what is put into it.
pub(super) type Transform = fn(&str) -> Cow<'_, str>;

/// The messages of a language, ready to be put into words.
pub(super) struct Messages {
    bundle: FluentBundle<FluentResource>,
}

/// British English.
pub(super) static BRITISH: LazyLock<Messages> =
    LazyLock::new(|| Messages::of("en-GB", &EN_GB, None));
/// The same with the words of one list exchanged.
pub(super) static AMERICAN: LazyLock<Messages> =
    LazyLock::new(|| Messages::of("en-US", &EN_GB, Some(in_american)));
/// French.
pub(super) static FRENCH: LazyLock<Messages> =
    LazyLock::new(|| Messages::of("fr", &FR, Some(in_french)));
/// Spanish.
pub(super) static SPANISH: LazyLock<Messages> = LazyLock::new(|| Messages::of("es", &ES, None));

/// British English, the only language in which laws describe themselves.
const EN_GB: [&str; 21] = [
    include_str!("../../data/words/en-GB/bench.ftl"),
    include_str!("../../data/words/en-GB/charge.ftl"),
    include_str!("../../data/words/en-GB/cores.ftl"),
    include_str!("../../data/words/en-GB/draw.ftl"),
    include_str!("../../data/words/en-GB/experiment.ftl"),
    include_str!("../../data/words/en-GB/freeze.ftl"),
    include_str!("../../data/words/en-GB/glossary.ftl"),
    include_str!("../../data/words/en-GB/keys.ftl"),
    include_str!("../../data/words/en-GB/laws.ftl"),
    include_str!("../../data/words/en-GB/lesson.ftl"),
    include_str!("../../data/words/en-GB/log.ftl"),
    include_str!("../../data/words/en-GB/making.ftl"),
    include_str!("../../data/words/en-GB/mixes.ftl"),
    include_str!("../../data/words/en-GB/page.ftl"),
    include_str!("../../data/words/en-GB/paper.ftl"),
    include_str!("../../data/words/en-GB/parts.ftl"),
    include_str!("../../data/words/en-GB/phone.ftl"),
    include_str!("../../data/words/en-GB/plan.ftl"),
    include_str!("../../data/words/en-GB/remarks.ftl"),
    include_str!("../../data/words/en-GB/sight.ftl"),
    include_str!("../../data/words/en-GB/terminal.ftl"),
];

/// French.
const FR: [&str; 20] = [
    include_str!("../../data/words/fr/bench.ftl"),
    include_str!("../../data/words/fr/charge.ftl"),
    include_str!("../../data/words/fr/cores.ftl"),
    include_str!("../../data/words/fr/draw.ftl"),
    include_str!("../../data/words/fr/experiment.ftl"),
    include_str!("../../data/words/fr/freeze.ftl"),
    include_str!("../../data/words/fr/glossary.ftl"),
    include_str!("../../data/words/fr/keys.ftl"),
    include_str!("../../data/words/fr/lesson.ftl"),
    include_str!("../../data/words/fr/log.ftl"),
    include_str!("../../data/words/fr/making.ftl"),
    include_str!("../../data/words/fr/mixes.ftl"),
    include_str!("../../data/words/fr/page.ftl"),
    include_str!("../../data/words/fr/paper.ftl"),
    include_str!("../../data/words/fr/parts.ftl"),
    include_str!("../../data/words/fr/phone.ftl"),
    include_str!("../../data/words/fr/plan.ftl"),
    include_str!("../../data/words/fr/remarks.ftl"),
    include_str!("../../data/words/fr/sight.ftl"),
    include_str!("../../data/words/fr/terminal.ftl"),
];

/// Spanish.
const ES: [&str; 20] = [
    include_str!("../../data/words/es/bench.ftl"),
    include_str!("../../data/words/es/charge.ftl"),
    include_str!("../../data/words/es/cores.ftl"),
    include_str!("../../data/words/es/draw.ftl"),
    include_str!("../../data/words/es/experiment.ftl"),
    include_str!("../../data/words/es/freeze.ftl"),
    include_str!("../../data/words/es/glossary.ftl"),
    include_str!("../../data/words/es/keys.ftl"),
    include_str!("../../data/words/es/lesson.ftl"),
    include_str!("../../data/words/es/log.ftl"),
    include_str!("../../data/words/es/making.ftl"),
    include_str!("../../data/words/es/mixes.ftl"),
    include_str!("../../data/words/es/page.ftl"),
    include_str!("../../data/words/es/paper.ftl"),
    include_str!("../../data/words/es/parts.ftl"),
    include_str!("../../data/words/es/phone.ftl"),
    include_str!("../../data/words/es/plan.ftl"),
    include_str!("../../data/words/es/remarks.ftl"),
    include_str!("../../data/words/es/sight.ftl"),
    include_str!("../../data/words/es/terminal.ftl"),
];

impl Messages {
    fn of(code: &str, files: &[&str], transform: Option<Transform>) -> Messages {
        let mut bundle = FluentBundle::new_concurrent(code.parse().into_iter().collect());
        // Marks that turn the line round have no place on paper.
        bundle.set_use_isolating(false);
        bundle.set_transform(transform);
        for file in files {
            // A line that cannot be read leaves its message out; a test reads every line.
            let read = FluentResource::try_new((*file).to_owned()).unwrap_or_else(|(read, _)| read);
            bundle.add_resource_overriding(read);
        }
        Messages { bundle }
    }

    /// The words of `id` or `id.attribute`; nothing where there is no such message.
    pub(super) fn words(&self, id: &str, given: &FluentArgs<'_>) -> Option<String> {
        let pattern = match id.split_once('.') {
            None => self.bundle.get_message(id)?.value()?,
            Some((id, attribute)) => {
                let message = self.bundle.get_message(id)?;
                message.get_attribute(attribute)?.value()
            }
        };
        // What a message asks for and was not given shows as its own name.
        let mut faults = Vec::new();
        let words = self
            .bundle
            .format_pattern(pattern, Some(given), &mut faults);
        Some(words.into_owned())
    }
}
