//! The programs that run on a card, and what each of them has in sight.

use wgpu::{
    BindGroup, BindGroupDescriptor, BindGroupEntry, BindGroupLayout, BindGroupLayoutDescriptor,
    BindGroupLayoutEntry, BindingResource, BindingType, BufferBindingType, ComputePassDescriptor,
    ComputePipeline, ComputePipelineDescriptor, PipelineCompilationOptions,
    PipelineLayoutDescriptor, ShaderModuleDescriptor, ShaderSource, ShaderStages,
};

use crate::device::Device;

/// A program that is ready to run.
#[derive(Debug)]
pub struct Program {
    pub pipeline: ComputePipeline,
    lists: BindGroupLayout,
}

/// What following heat takes.
#[derive(Debug)]
pub struct Programs {
    /// What stands still during a step.
    pub prepare: Program,
    /// Swept cells of plain materials.
    pub sweep: Program,
    /// Swept cells of any material.
    pub sweep_changing: Program,
    /// Conductivities of swept cells.
    pub conduct: Program,
    /// A stage of staged cells.
    pub stage: Program,
    /// The end of a step.
    pub settle: Program,
    /// The layouts of the step alone, and of step and stage.
    pub of_step: [BindGroupLayout; 2],
}

/// How a program sees a list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Sees {
    /// A few figures.
    Figures,
    /// To read.
    Reads,
    /// To read and to write.
    Writes,
}

use Sees::{Figures, Reads, Writes};

const SHARED: &str = include_str!("shaders/shared.wgsl");
const TABLES: &str = include_str!("shaders/tables.wgsl");
const LANES: &str = include_str!("shaders/lanes.wgsl");
const AROUND: &str = include_str!("shaders/around.wgsl");

/// Most lists that one of the programs has in sight.
pub const MOST_LISTS: u32 = 14;

impl Programs {
    /// Makes all of them ready.
    pub fn of(device: &Device) -> Programs {
        let of_step = [1, 2].map(|count| step_layout(device, count));
        let make = |name: &str, parts: &[&str], sees: &[Sees]| {
            let turns = usize::from(name == "stage");
            Program::of(device, name, parts, sees, Some(&of_step[turns]))
        };
        Programs {
            prepare: make(
                "prepare",
                &[
                    SHARED,
                    TABLES,
                    AROUND,
                    LANES,
                    include_str!("shaders/prepare.wgsl"),
                ],
                &[
                    Figures, Writes, Reads, Reads, Reads, Reads, Writes, Reads, Reads, Writes,
                    Reads, Reads, Reads, Reads, Writes,
                ],
            ),
            sweep: make(
                "sweep",
                &[SHARED, include_str!("shaders/sweep.wgsl")],
                &[Figures, Reads, Reads, Reads, Reads, Figures, Reads, Writes],
            ),
            sweep_changing: make(
                "sweep changing",
                &[SHARED, TABLES, include_str!("shaders/sweep_changing.wgsl")],
                &[
                    Figures, Reads, Reads, Reads, Reads, Figures, Reads, Writes, Reads, Reads,
                    Writes,
                ],
            ),
            conduct: make(
                "conduct",
                &[SHARED, TABLES, include_str!("shaders/conduct.wgsl")],
                &[Figures, Reads, Reads, Reads, Figures, Reads, Writes],
            ),
            stage: make(
                "stage",
                &[SHARED, TABLES, AROUND, include_str!("shaders/stage.wgsl")],
                &[
                    Figures, Reads, Reads, Reads, Reads, Reads, Reads, Reads, Reads, Writes, Reads,
                    Writes, Writes,
                ],
            ),
            settle: make(
                "settle",
                &[
                    SHARED,
                    TABLES,
                    AROUND,
                    LANES,
                    include_str!("shaders/settle.wgsl"),
                ],
                &[
                    Figures, Writes, Reads, Reads, Reads, Writes, Writes, Reads, Reads, Reads,
                    Reads, Writes, Writes, Writes, Reads,
                ],
            ),
            of_step,
        }
    }
}

impl Program {
    /// Copies a list to another.
    pub fn copying(device: &Device) -> Program {
        let text = include_str!("shaders/copy.wgsl");
        Program::of(device, "copy", &[text], &[Reads, Writes], None)
    }

    /// What it has in sight, in its order.
    pub fn group(&self, device: &Device, lists: &[BindingResource<'_>]) -> BindGroup {
        group(device, &self.lists, lists)
    }

    fn of(
        device: &Device,
        name: &str,
        parts: &[&str],
        sees: &[Sees],
        of_step: Option<&BindGroupLayout>,
    ) -> Program {
        let module = device.inner.create_shader_module(ShaderModuleDescriptor {
            label: Some(name),
            source: ShaderSource::Wgsl(parts.concat().into()),
        });
        let entries: Vec<_> = (0..)
            .zip(sees)
            .map(|(at, sees)| entry(at, *sees, false))
            .collect();
        let lists = device
            .inner
            .create_bind_group_layout(&BindGroupLayoutDescriptor {
                label: Some(name),
                entries: &entries,
            });
        let layouts: Vec<_> = [Some(&lists)]
            .into_iter()
            .chain(of_step.map(Some))
            .collect();
        let layout = device
            .inner
            .create_pipeline_layout(&PipelineLayoutDescriptor {
                label: Some(name),
                bind_group_layouts: &layouts,
                immediate_size: 0,
            });
        let pipeline = device
            .inner
            .create_compute_pipeline(&ComputePipelineDescriptor {
                label: Some(name),
                layout: Some(&layout),
                module: &module,
                entry_point: Some("main"),
                compilation_options: PipelineCompilationOptions::default(),
                cache: None,
            });
        Program { pipeline, lists }
    }
}

/// A layout with lists in its order.
pub fn group(
    device: &Device,
    layout: &BindGroupLayout,
    lists: &[BindingResource<'_>],
) -> BindGroup {
    let entries = (0..).zip(lists).map(|(binding, resource)| BindGroupEntry {
        binding,
        resource: resource.clone(),
    });
    device.inner.create_bind_group(&BindGroupDescriptor {
        label: None,
        layout,
        entries: &entries.collect::<Vec<_>>(),
    })
}

/// A pass that is not timed.
pub fn pass() -> ComputePassDescriptor<'static> {
    ComputePassDescriptor::default()
}

/// Figures of which one entry is picked at each run: the step, and the number of the stage.
fn step_layout(device: &Device, count: u32) -> BindGroupLayout {
    let entries: Vec<_> = (0..count).map(|at| entry(at, Figures, true)).collect();
    device
        .inner
        .create_bind_group_layout(&BindGroupLayoutDescriptor {
            label: Some("step"),
            entries: &entries,
        })
}

fn entry(binding: u32, sees: Sees, has_dynamic_offset: bool) -> BindGroupLayoutEntry {
    let ty = match sees {
        Figures => BufferBindingType::Uniform,
        Reads => BufferBindingType::Storage { read_only: true },
        Writes => BufferBindingType::Storage { read_only: false },
    };
    BindGroupLayoutEntry {
        binding,
        visibility: ShaderStages::COMPUTE,
        ty: BindingType::Buffer {
            ty,
            has_dynamic_offset,
            min_binding_size: None,
        },
        count: None,
    }
}
