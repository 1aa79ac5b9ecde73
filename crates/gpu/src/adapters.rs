//! The graphics cards of this machine, as their drivers tell of them.

use std::fmt;

use wgpu::{Backend, Backends, DeviceType, Instance, InstanceDescriptor, InstanceFlags};
use wgpu::{Limits, MemoryBudgetThresholds};

/// A graphics card with its driver.
#[derive(Debug, Clone)]
pub struct Adapter {
    /// What its driver calls it.
    pub name: String,
    /// The driver and its version.
    pub driver: String,
    /// What it is.
    pub kind: Kind,
    /// The interface through which it is reached: Vulkan, Metal or Direct3D.
    pub interface: &'static str,
    /// What it takes at most.
    pub bounds: Bounds,
    pub(crate) inner: wgpu::Adapter,
}

/// What a card is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A card with memory of its own.
    Discrete,
    /// A part of the processor that shares its memory.
    Integrated,
    /// A card of another machine, lent to this one.
    Virtual,
    /// No card: the processor works through the same interface, slower than on its own.
    Software,
    /// The driver does not say.
    Unknown,
}

/// What a card takes at most.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Bounds {
    /// Bytes of a list that a program on the card may have in sight at once.
    pub seen_bytes: u64,
    /// Bytes of a list.
    pub list_bytes: u64,
    /// Lists that a program on the card may have in sight.
    pub lists: u32,
}

/// Share of a card's memory, in per cent, above which no more is asked for: the screen and other
/// programs need some, and a card that runs out may be lost to all of them.
const MOST_MEMORY: u8 = 90;

/// The cards of this machine, best first: with memory of their own, within the processor, then all
/// others. None where no driver is installed.
pub fn adapters() -> Vec<Adapter> {
    let instance = Instance::new(InstanceDescriptor {
        flags: InstanceFlags::empty(),
        memory_budget_thresholds: MemoryBudgetThresholds {
            for_resource_creation: Some(MOST_MEMORY),
            for_device_loss: None,
        },
        ..InstanceDescriptor::new_without_display_handle()
    });
    let found = pollster::block_on(instance.enumerate_adapters(Backends::PRIMARY));
    let mut adapters: Vec<Adapter> = found.into_iter().map(Adapter::of).collect();
    // The drivers' own order stays among equals.
    adapters.sort_by_key(|adapter| adapter.kind.rank());
    adapters
}

impl Adapter {
    fn of(inner: wgpu::Adapter) -> Adapter {
        let info = inner.get_info();
        let version = info.driver_info.trim();
        Adapter {
            name: info.name,
            driver: format!("{} {version}", info.driver).trim().to_owned(),
            kind: Kind::of(info.device_type),
            interface: interface(info.backend),
            bounds: Bounds::of(&inner.limits()),
            inner,
        }
    }
}

impl Kind {
    fn of(kind: DeviceType) -> Kind {
        match kind {
            DeviceType::DiscreteGpu => Kind::Discrete,
            DeviceType::IntegratedGpu => Kind::Integrated,
            DeviceType::VirtualGpu => Kind::Virtual,
            DeviceType::Cpu => Kind::Software,
            DeviceType::Other => Kind::Unknown,
        }
    }

    fn rank(self) -> u8 {
        match self {
            Kind::Discrete => 0,
            Kind::Integrated => 1,
            Kind::Virtual => 2,
            Kind::Unknown => 3,
            Kind::Software => 4,
        }
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        to.write_str(match self {
            Kind::Discrete => "a card with memory of its own",
            Kind::Integrated => "within the processor, sharing its memory",
            Kind::Virtual => "a card lent by another machine",
            Kind::Software => "no card: the processor in its place",
            Kind::Unknown => "of a kind that its driver does not tell",
        })
    }
}

impl Bounds {
    fn of(limits: &Limits) -> Bounds {
        Bounds {
            seen_bytes: limits.max_storage_buffer_binding_size,
            list_bytes: limits.max_buffer_size,
            lists: limits.max_storage_buffers_per_shader_stage,
        }
    }
}

fn interface(backend: Backend) -> &'static str {
    match backend {
        Backend::Vulkan => "Vulkan",
        Backend::Metal => "Metal",
        Backend::Dx12 => "Direct3D 12",
        Backend::Gl => "OpenGL",
        Backend::BrowserWebGpu => "WebGPU",
        Backend::Noop => "nothing",
    }
}
