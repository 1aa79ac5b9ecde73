//! From a job folder and the shop's own file to one Plan.
//!
//! ```
//! use job::job::Job;
//! use job::part::Part;
//! use job::shop::ShopFile;
//! use job::work_out::work_out;
//!
//! // A plate of 100 x 60 x 10 mm as an OBJ file, the quick look in aluminium.
//! let plate = "v 0 0 0\nv 100 0 0\nv 100 60 0\nv 0 60 0\n\
//!              v 0 0 10\nv 100 0 10\nv 100 60 10\nv 0 60 10\n\
//!              f 4 3 2 1\nf 5 6 7 8\nf 1 2 6 5\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8\n";
//! let plate = Part::Mesh(pattern::look::look("plate.obj", plate.as_bytes(), None)?);
//! let shop: ShopFile = job::file_fault::read("shop.toml", job::folder::STARTER_SHOP)?;
//! let plan = work_out(&Job::quick("plate", "aluminium")?, &shop.meant()?, &plate);
//! let [low, likely, high] = plan.figure("casting mass").map_or([0.0; 3], |f| f.amount.values());
//! assert!(low <= 0.1602 && (likely - 0.1602).abs() < 0.001 && 0.1602 <= high);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

pub mod amount;
pub mod bench_key;
pub mod changed;
pub mod charge;
pub mod chills;
pub mod conditions;
pub mod contact_worth;
pub mod cores_told;
pub mod described;
pub mod draw_maps;
pub mod draw_told;
pub mod dryness;
pub mod feeder_search;
pub mod feeder_told;
pub mod file_fault;
pub mod filling;
pub mod filling_file;
pub mod filling_told;
pub mod fingerprint;
pub mod folder;
pub mod freezing;
pub mod freezing_asked;
pub mod freezing_file;
pub mod freezing_hints;
pub mod freezing_map;
pub mod freezing_told;
pub mod given_part;
pub mod glossary;
pub mod halves;
pub mod heats;
pub mod job;
pub mod job_file;
mod joint_drawn;
pub mod kept_runs;
pub mod learned;
pub mod lesson;
pub mod made_cores;
pub mod making;
pub mod map_scale;
pub mod melt_loss;
pub mod mould_drawn;
pub mod mould_solids;
pub mod mould_told;
pub mod part;
pub mod part_maps;
pub mod pattern_made;
pub mod place_text;
pub mod placed_part;
pub mod plan;
pub mod plan_file;
pub mod pour_card;
pub mod printed_cores;
pub mod remark;
pub mod rewritten;
pub mod scoop;
pub mod shop;
pub mod slab_trial;
pub mod solved;
pub mod solved_kept;
pub mod turning;
pub mod typed_key;
pub mod usual_pouring;
pub mod why;
pub mod words;
pub mod work_out;
