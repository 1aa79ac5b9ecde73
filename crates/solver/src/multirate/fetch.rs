//! Numbers are asked for from far memory before they are needed.
//!
//! A sweep over more cells than the caches hold comes to one new row of the box for each row that
//! it does, and would wait for it line after line. Asking changes no number; where the machine has
//! no way to ask, nothing is done.

/// A way to ask.
#[derive(Clone, Copy)]
pub struct Fetch {
    #[cfg(target_arch = "x86_64")]
    sse: Option<pulp::core_arch::x86::Sse>,
}

/// Numbers in a line of the cache.
#[cfg(target_arch = "x86_64")]
const LINE: usize = 64 / size_of::<f32>();

impl Fetch {
    /// The way of this machine.
    #[cfg(target_arch = "x86_64")]
    pub fn new() -> Fetch {
        let sse = pulp::core_arch::x86::Sse::try_new();
        Fetch { sse }
    }

    /// The way of this machine.
    #[cfg(not(target_arch = "x86_64"))]
    pub fn new() -> Fetch {
        Fetch {}
    }

    /// Asks for numbers that are soon read or written.
    #[cfg(target_arch = "x86_64")]
    #[inline(always)]
    pub fn ahead(self, numbers: &[f32]) {
        /// Into all caches.
        const EVERYWHERE: i32 = 3;
        if let Some(sse) = self.sse {
            for line in numbers.chunks(LINE) {
                sse._mm_prefetch::<EVERYWHERE>(line.as_ptr().cast());
            }
        }
    }

    /// Asks for numbers that are soon read or written.
    #[cfg(not(target_arch = "x86_64"))]
    #[inline(always)]
    pub fn ahead(self, _: &[f32]) {}
}
