//! A card that is open for work: what is asked of it, and whether it is still there.

use std::sync::{Arc, Mutex, PoisonError};

use bytemuck::Pod;
use solver::elsewhere::Unable;
use wgpu::{Buffer, BufferDescriptor, BufferUsages, DeviceDescriptor, Error, MapMode, PollType};

use crate::adapters::{Adapter, Bounds};

/// A card that is open for work.
#[derive(Debug)]
pub struct Device {
    /// What it takes at most.
    pub bounds: Bounds,
    pub(crate) inner: wgpu::Device,
    pub(crate) queue: wgpu::Queue,
    /// Bytes between two entries of a list of which one is picked at a time.
    pub(crate) stride: u32,
    /// What went wrong first, if anything has.
    trouble: Arc<Mutex<Option<Unable>>>,
}

impl Device {
    /// Opens a card with all that it can do.
    ///
    /// # Errors
    ///
    /// A driver that refuses.
    pub fn open(adapter: &Adapter) -> Result<Device, Unable> {
        let limits = adapter.inner.limits();
        let wanted = DeviceDescriptor {
            required_limits: limits.clone(),
            ..DeviceDescriptor::default()
        };
        let opened = pollster::block_on(adapter.inner.request_device(&wanted));
        let (inner, queue) = opened.map_err(|error| Unable::Refused {
            words: error.to_string(),
        })?;
        let trouble = Arc::new(Mutex::new(None));
        let (told, lost) = (Arc::clone(&trouble), Arc::clone(&trouble));
        inner.on_uncaptured_error(Arc::new(move |error| note(&told, unable(&error))));
        inner.set_device_lost_callback(move |_, words| note(&lost, Unable::Lost { words }));
        Ok(Device {
            bounds: adapter.bounds,
            stride: limits.min_uniform_buffer_offset_alignment.max(256),
            inner,
            queue,
            trouble,
        })
    }

    /// Says what went wrong, if anything has.
    ///
    /// # Errors
    ///
    /// A card that was lost, that has no memory left, or that refused something.
    pub fn is_well(&self) -> Result<(), Unable> {
        let trouble = self.trouble.lock().unwrap_or_else(PoisonError::into_inner);
        trouble.clone().map_or(Ok(()), Err)
    }

    /// Waits until all is done that was asked for.
    ///
    /// # Errors
    ///
    /// As for [`Device::is_well`].
    pub(crate) fn wait(&self) -> Result<(), Unable> {
        self.queue.submit([]);
        let waited = self.inner.poll(PollType::wait_indefinitely());
        self.is_well()?;
        waited.map(|_| ()).map_err(|error| Unable::Lost {
            words: error.to_string(),
        })
    }

    /// Takes the card away from whatever runs on it, as a driver that fails does.
    pub fn destroy(&self) {
        self.inner.destroy();
    }

    /// A list of so many bytes on the card, at least four.
    pub(crate) fn list(&self, name: &str, bytes: u64) -> Buffer {
        self.inner.create_buffer(&BufferDescriptor {
            label: Some(name),
            size: bytes.next_multiple_of(4).max(4),
            usage: BufferUsages::STORAGE | BufferUsages::COPY_SRC | BufferUsages::COPY_DST,
            mapped_at_creation: false,
        })
    }

    /// A small list of figures that programs on the card only read.
    pub(crate) fn figures(&self, name: &str, bytes: u64) -> Buffer {
        self.inner.create_buffer(&BufferDescriptor {
            label: Some(name),
            size: bytes.next_multiple_of(16).max(16),
            usage: BufferUsages::UNIFORM | BufferUsages::COPY_DST,
            mapped_at_creation: false,
        })
    }

    /// Puts numbers into a list from an entry on, a piece at a time so that what is on its way
    /// takes little room.
    pub(crate) fn put<Number: Pod>(&self, list: &Buffer, from: u64, numbers: &[Number]) {
        let mut at = from * size_of::<Number>() as u64;
        for piece in bytemuck::cast_slice::<Number, u8>(numbers).chunks(PIECE_BYTES) {
            self.queue.write_buffer(list, at, piece);
            at += piece.len() as u64;
            if piece.len() == PIECE_BYTES {
                self.queue.submit([]);
            }
        }
    }

    /// Reads numbers of a list from an entry on.
    ///
    /// # Errors
    ///
    /// A card that is no longer there.
    pub(crate) fn take<Number: Pod>(
        &self,
        list: &Buffer,
        from: u64,
        numbers: &mut [Number],
    ) -> Result<(), Unable> {
        if numbers.is_empty() {
            return Ok(());
        }
        let mut at = from * size_of::<Number>() as u64;
        let bytes = bytemuck::cast_slice_mut::<Number, u8>(numbers);
        let most = bytes.len().clamp(1, PIECE_BYTES) as u64;
        let room = self.inner.create_buffer(&BufferDescriptor {
            label: Some("read"),
            size: most,
            usage: BufferUsages::MAP_READ | BufferUsages::COPY_DST,
            mapped_at_creation: false,
        });
        for piece in bytes.chunks_mut(PIECE_BYTES) {
            let len = piece.len() as u64;
            let mut encoder = self.inner.create_command_encoder(&Default::default());
            encoder.copy_buffer_to_buffer(list, at, &room, 0, len);
            self.queue.submit([encoder.finish()]);
            self.read(&room, piece)?;
            at += len;
        }
        Ok(())
    }

    /// Reads what was copied into a list that can be read, once all that was asked for is done.
    ///
    /// # Errors
    ///
    /// A card that is no longer there.
    pub(crate) fn read(&self, room: &Buffer, bytes: &mut [u8]) -> Result<(), Unable> {
        let slice = room.slice(..bytes.len() as u64);
        let lost = |words: String| {
            let known = self.is_well();
            known.err().unwrap_or(Unable::Lost { words })
        };
        slice.map_async(MapMode::Read, |_| ());
        let waited = self.inner.poll(PollType::wait_indefinitely());
        waited.map_err(|error| lost(error.to_string()))?;
        self.is_well()?;
        let view = slice.get_mapped_range();
        let view = view.map_err(|error| lost(error.to_string()))?;
        bytes.copy_from_slice(&view);
        drop(view);
        room.unmap();
        Ok(())
    }
}

/// Bytes that are on their way to or from a card at a time: pieces of this size go as fast as
/// larger ones, and none of them takes much room on either side.
const PIECE_BYTES: usize = 1 << 26;

fn note(trouble: &Mutex<Option<Unable>>, unable: Unable) {
    let mut trouble = trouble.lock().unwrap_or_else(PoisonError::into_inner);
    trouble.get_or_insert(unable);
}

fn unable(error: &Error) -> Unable {
    match error {
        Error::OutOfMemory { .. } => Unable::Memory { needed_bytes: 0 },
        _ => Unable::Refused {
            words: error.to_string(),
        },
    }
}
