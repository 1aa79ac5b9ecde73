//! How fast memory goes from one list to another, on a card and on the processor beside it.
//!
//! Following heat moves far more than it reckons, so the ratio of both says about how much faster
//! a card is. Bytes read and bytes written both count; the best of a few copies is told, since
//! other work can only slow them.

use std::time::Instant;

use rayon::iter::{IndexedParallelIterator, ParallelIterator};
use rayon::slice::{ParallelSlice, ParallelSliceMut};
use solver::elsewhere::Unable;
use wgpu::{BufferDescriptor, BufferUsages};

use crate::adapters::Adapter;
use crate::device::Device;
use crate::programs::Program;

/// Bytes of each of the two lists on a card: no cache of today's holds both.
const CARD_BYTES: u64 = 1 << 28;

/// The same of the processor, whose caches are smaller and whose memory is slower.
const PROCESSOR_BYTES: usize = 1 << 27;

/// Copies in one go, so that the way to the card and back counts little.
const AT_ONCE: u32 = 10;

/// How often that is timed.
const REPEATS: usize = 4;

/// Bytes a second that a card copies within its own memory, read and written.
///
/// # Errors
///
/// A card that cannot be opened or that is lost meanwhile.
pub fn card_copy(adapter: &Adapter) -> Result<f64, Unable> {
    let device = Device::open(adapter)?;
    let bytes = CARD_BYTES
        .min(device.bounds.seen_bytes)
        .min(device.bounds.list_bytes);
    // Software in the place of a card: its caches and its speed are those of the processor.
    let bytes = if device.bounds.seen_bytes <= 1 << 27 {
        bytes.min(1 << 26)
    } else {
        bytes
    };
    let [from, to] = ["from", "to"].map(|name| device.list(name, bytes));
    // Numbers that differ: a card may be quicker with nothing but noughts.
    let numbers: Vec<f32> = (0..1 << 22).map(|at| (at % 1013) as f32).collect();
    for piece in 0..bytes / (4 * numbers.len() as u64) {
        device.put(&from, piece * numbers.len() as u64, &numbers);
    }
    device.wait()?;
    let program = Program::copying(&device);
    let group = program.group(&device, &[from.as_entire_binding(), to.as_entire_binding()]);
    let room = device.inner.create_buffer(&BufferDescriptor {
        label: Some("read"),
        size: 4,
        usage: BufferUsages::MAP_READ | BufferUsages::COPY_DST,
        mapped_at_creation: false,
    });
    let quads = bytes / 16;
    let groups = quads.div_ceil(256);
    let wide = groups.min(32768);
    let mut best = f64::INFINITY;
    for _ in 0..=REPEATS {
        let begun = Instant::now();
        let mut encoder = device.inner.create_command_encoder(&Default::default());
        {
            let mut pass = encoder.begin_compute_pass(&Default::default());
            pass.set_pipeline(&program.pipeline);
            pass.set_bind_group(0, &group, &[]);
            for _ in 0..AT_ONCE {
                pass.dispatch_workgroups(wide as u32, groups.div_ceil(wide) as u32, 1);
            }
        }
        encoder.copy_buffer_to_buffer(&to, 0, &room, 0, 4);
        device.queue.submit([encoder.finish()]);
        device.read(&room, &mut [0; 4])?;
        best = best.min(begun.elapsed().as_secs_f64());
    }
    Ok(2.0 * bytes as f64 * f64::from(AT_ONCE) / best)
}

/// Bytes a second that all cores together copy from one list to another, read and written.
pub fn processor_copy() -> f64 {
    let count = PROCESSOR_BYTES / size_of::<f32>();
    let from = vec![1.0_f32; count];
    let mut to = vec![0.0_f32; count];
    let piece = count.div_ceil(rayon::current_num_threads());
    let mut best = f64::INFINITY;
    for _ in 0..=REPEATS {
        let begun = Instant::now();
        let pieces = to.par_chunks_mut(piece).zip(from.par_chunks(piece));
        pieces.for_each(|(to, from)| to.copy_from_slice(from));
        best = best.min(begun.elapsed().as_secs_f64());
    }
    2.0 * PROCESSOR_BYTES as f64 / best
}
