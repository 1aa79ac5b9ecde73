//! The programs that run on a card, and what each of them has in sight.

use rayon::join;
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
pub const MOST_LISTS: u32 = 15;

/// A program before it is made ready.
struct Text {
    name: &'static str,
    parts: &'static [&'static str],
    /// What it has in sight, in its order.
    sees: &'static [Sees],
}

const PREPARE: Text = Text {
    name: "prepare",
    parts: &[
        SHARED,
        TABLES,
        AROUND,
        LANES,
        include_str!("shaders/prepare.wgsl"),
    ],
    sees: &[
        Figures, Reads, Reads, Reads, Reads, Reads, Writes, Reads, Reads, Writes, Reads, Reads,
        Reads, Reads, Writes, Writes,
    ],
};

const SWEEP: Text = Text {
    name: "sweep",
    parts: &[SHARED, include_str!("shaders/sweep.wgsl")],
    sees: &[Figures, Reads, Reads, Reads, Reads, Figures, Reads, Writes],
};

const SWEEP_CHANGING: Text = Text {
    name: "sweep changing",
    parts: &[SHARED, TABLES, include_str!("shaders/sweep_changing.wgsl")],
    sees: &[
        Figures, Reads, Reads, Reads, Reads, Figures, Reads, Writes, Reads, Reads, Writes,
    ],
};

const CONDUCT: Text = Text {
    name: "conduct",
    parts: &[SHARED, TABLES, include_str!("shaders/conduct.wgsl")],
    sees: &[Figures, Reads, Reads, Reads, Figures, Reads, Writes],
};

const STAGE: Text = Text {
    name: "stage",
    parts: &[SHARED, TABLES, AROUND, include_str!("shaders/stage.wgsl")],
    sees: &[
        Figures, Reads, Reads, Reads, Reads, Reads, Reads, Reads, Reads, Writes, Reads, Writes,
        Writes,
    ],
};

const SETTLE: Text = Text {
    name: "settle",
    parts: &[
        SHARED,
        TABLES,
        AROUND,
        LANES,
        include_str!("shaders/settle.wgsl"),
    ],
    sees: &[
        Figures, Reads, Reads, Reads, Reads, Writes, Writes, Reads, Reads, Reads, Reads, Writes,
        Writes, Writes, Reads, Writes,
    ],
};

const COPY: Text = Text {
    name: "copy",
    parts: &[include_str!("shaders/copy.wgsl")],
    sees: &[Reads, Writes],
};

impl Programs {
    /// Makes all of them ready, side by side: a driver takes its time over each.
    pub fn of(device: &Device) -> Programs {
        let of_step = [1, 2].map(|count| step_layout(device, count));
        let make = |text: &Text| {
            let turns = usize::from(text.name == STAGE.name);
            Program::of(device, text, Some(&of_step[turns]))
        };
        let ((prepare, stage), ((settle, conduct), (sweep, sweep_changing))) = join(
            || join(|| make(&PREPARE), || make(&STAGE)),
            || {
                join(
                    || join(|| make(&SETTLE), || make(&CONDUCT)),
                    || join(|| make(&SWEEP), || make(&SWEEP_CHANGING)),
                )
            },
        );
        Programs {
            prepare,
            sweep,
            sweep_changing,
            conduct,
            stage,
            settle,
            of_step,
        }
    }
}

impl Program {
    /// Copies a list to another.
    pub fn copying(device: &Device) -> Program {
        Program::of(device, &COPY, None)
    }

    /// What it has in sight, in its order.
    pub fn group(&self, device: &Device, lists: &[BindingResource<'_>]) -> BindGroup {
        group(device, &self.lists, lists)
    }

    fn of(device: &Device, text: &Text, of_step: Option<&BindGroupLayout>) -> Program {
        let Text { name, parts, sees } = *text;
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

#[cfg(test)]
mod tests {
    use naga::back::{hlsl, msl};
    use naga::front::wgsl;
    use naga::valid::{Capabilities, ModuleInfo, ValidationFlags, Validator};

    use super::{CONDUCT, COPY, PREPARE, SETTLE, STAGE, SWEEP, SWEEP_CHANGING, Text};

    const ALL: [Text; 7] = [PREPARE, SWEEP, SWEEP_CHANGING, CONDUCT, STAGE, SETTLE, COPY];

    /// A program as the translator reads it.
    fn read(text: &Text) -> (naga::Module, ModuleInfo) {
        let words = text.parts.concat();
        let module = wgsl::parse_str(&words)
            .unwrap_or_else(|error| panic!("{}: {}", text.name, error.emit_to_string(&words)));
        let mut validator = Validator::new(ValidationFlags::all(), Capabilities::empty());
        let info = validator
            .validate(&module)
            .unwrap_or_else(|error| panic!("{}: {error:?}", text.name));
        (module, info)
    }

    // The same translator as on a machine whose cards speak Metal or Direct3D; compilers of those
    // languages stand on such machines only.
    #[test]
    fn programs_are_translated_for_metal_and_direct3d() {
        for text in &ALL {
            let (module, info) = read(text);
            let options = msl::Options {
                lang_version: (2, 1),
                fake_missing_bindings: true,
                ..msl::Options::default()
            };
            let metal = msl::write_string(&module, &info, &options, &Default::default());
            let (metal, _) = metal.unwrap_or_else(|error| panic!("{}: {error}", text.name));
            assert!(metal.contains("kernel void"), "{}: {metal}", text.name);

            let options = hlsl::Options {
                shader_model: hlsl::ShaderModel::V5_1,
                fake_missing_bindings: true,
                ..hlsl::Options::default()
            };
            let pipeline = hlsl::PipelineOptions::default();
            let mut direct = String::new();
            let mut writer = hlsl::Writer::new(&mut direct, &options, &pipeline);
            let written = writer.write(&module, &info, None);
            written.unwrap_or_else(|error| panic!("{}: {error}", text.name));
            assert!(direct.contains("numthreads"), "{}: {direct}", text.name);
        }
    }

    #[test]
    fn each_program_sees_the_lists_that_it_names() {
        for text in &ALL {
            let (module, _) = read(text);
            let of_group = |number: u32| {
                let lists = module.global_variables.iter();
                lists
                    .filter_map(|(_, list)| list.binding)
                    .filter(|binding| binding.group == number)
                    .count()
            };
            assert_eq!(of_group(0), text.sees.len(), "{}", text.name);
            let lists = text.sees.iter().filter(|sees| **sees != super::Figures);
            assert!(lists.count() as u32 <= super::MOST_LISTS, "{}", text.name);
        }
    }
}
