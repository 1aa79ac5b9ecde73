//! A mould built by the rules of the rigging, cut into cells, and looked at while it fills: what
//! one room hands the other fits, and the time is that of the handbooks.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use measure::flow::Duration;
use measure::heat::Temperature;
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use metal::alloys::named;
use mould::flask::{Load, clearance, flask_to_make};
use mould::gating::choke::{choke, discharge, effective_head};
use mould::gating::friction::TRIED;
use mould::gating::running_system::basin_over;
use pattern::shape::{Form, Shape};
use pour::case::Filling;
use pour::cells::Stuff;
use pour::fill::cooling::{Metal, Sand};
use pour::fill::drawn::drawn;
use pour::fill::glance;
use pour::meshing::{Meshing, cut, meshed};
use pour::start::Start;
use pour::tables::{SandHeat, metal_table};
use rigging::given::{Casting, Densities, Given, Half, Parting, Sizes};
use rigging::mould::mould;
use rigging::placement::Placement;

fn mm(amount: f64) -> Length {
    Length::from_mm(amount)
}

/// A plate of 120 × 80 × 20 mm, half of it below the joint.
fn given() -> Given {
    let plate = Shape {
        form: Form::Block {
            size: [mm(120.0), mm(80.0), mm(20.0)],
        },
        at: [mm(60.0), mm(40.0), mm(-10.0)],
        axis: [0.0, 0.0, 1.0],
        turn_degrees: 0.0,
        is_taken_away: false,
    };
    let sand = clearance(Mass::from_kg(0.5));
    let load = Load {
        count: 1,
        plan: [mm(120.0), mm(80.0)],
        above_joint: mm(10.0),
        below_joint: mm(10.0),
        sprue: mm(20.0),
    };
    let (flask, layout) = flask_to_make(&load, &sand);
    let pour_height = flask.cope + mm(25.0);
    Given {
        flask,
        layout,
        count: 1,
        sand,
        casting: Casting {
            mesh: plate.skin(1).unwrap(),
            sections: Vec::new(),
            cores: Vec::new(),
        },
        sizes: Sizes {
            pour_height,
            sprue_top: mm(14.0),
            sprue_foot: mm(10.0),
            basin: basin_over(mm(14.0), pour_height),
            runners: Area::from_mm2(160.0),
            gates: Area::from_mm2(160.0),
            past_last_gate: mm(25.0),
            runner_half: Half::Drag,
            feeder: None,
            vents: None,
        },
        parting: Parting::Flat,
        densities: Densities {
            metal: Density::from_kg_per_m3(2400.0),
            sand: Density::from_kg_per_m3(1600.0),
            core: Density::from_kg_per_m3(1600.0),
        },
    }
}

#[test]
fn a_mould_by_the_rules_fills_in_the_time_of_its_choke() {
    let given = given();
    let built = mould(&given, &Placement::default()).unwrap();
    let meshing = Meshing {
        wall_mm: 20.0,
        across: 10.0,
        budget: 400_000.0,
        staircase: false,
        even: false,
        also_mm: None,
    };
    let meshed = meshed(&built, &meshing).unwrap();
    let cells = &meshed.cells;
    let gating = drawn(cells, &meshed.pieces, &meshed.piece, &given.sizes, TRIED).unwrap();
    let alloy = named("A356").unwrap();
    let metal = Metal {
        kind: "aluminium".to_owned(),
        table: metal_table(alloy, 1.0),
        kg_m3: alloy.density_liquid.band.likely().as_kg_per_m3(),
        poured_c: 720.0,
        stops_at_solid: 0.3,
    };
    let sand = Sand {
        celsius: 20.0,
        draws_w_rts_m2_k: 1080.0,
        film_w_m2_k: 1000.0,
    };
    let seen = glance(cells, &gating, &metal, &sand).unwrap();
    // All of it fills, with what leaves the basin.
    assert!((seen.lies_m3 / seen.hollow_m3 - 1.0).abs() < 1e-9);
    assert!((seen.poured_m3 / seen.lies_m3 - 1.0).abs() < 1e-4);
    let plate_m3 = 0.120 * 0.080 * 0.020;
    assert!(
        (seen.hollow_m3 / plate_m3 - 1.0).abs() < 0.03,
        "{}",
        seen.hollow_m3
    );
    // The time that the law of the choke has for the area of the sprue's foot at the mean head,
    // with a discharge as the handbooks give it for bends and two gates up to a tapered sprue:
    // 0.73 to 0.9.
    let takes = Duration::from_s(seen.ends_s - seen.starts_s);
    let poured = alloy.density_liquid.band.likely() * Volume::from_m3(seen.hollow_m3);
    let gate = mm(gating.gates_mm[0][2]);
    let head = effective_head(given.sizes.pour_height - gate, mm(10.0) - gate, mm(20.0));
    let likely = alloy.density_liquid.band.likely();
    let area = choke(poured, likely, takes, 1.0, head).as_mm2();
    let discharges = area / (std::f64::consts::PI / 4.0 * 100.0);
    let [low, high] = [discharge().low(), discharge().high()];
    assert!((low..=high).contains(&discharges), "{discharges}");
    // What the freezing starts from: a temperature for every cell, that of metal above its
    // freezing, since the pour is brisk.
    assert_eq!(seen.arrival_c.len(), cells.stuff.len());
    let liquidus_c = alloy.liquidus.band.likely().as_celsius();
    for place in 0..cells.stuff.len() {
        if cells.stuff[place] == Stuff::Metal {
            let celsius = f64::from(seen.arrival_c[place]);
            assert!((liquidus_c - 5.0..=720.1).contains(&celsius), "{celsius}");
        }
    }
    // What the metal lost on its way is found in the sand, and no more of it.
    let filling = Filling {
        metal: metal_table(alloy, 1.0),
        sand: SandHeat::damp(0.035),
        core: SandHeat::dry(),
        contact_w_m2k: 320.0,
        chill_w_m2k: 1500.0,
        air_c: 20.0,
        to_air_w_m2k: 8.0,
    };
    let unseen = Temperature::from_celsius(650.0);
    let start = Start::filled(&meshed, &seen, &filling, metal.poured_c, unseen);
    let sand = filling.sand.table("sand");
    let cell_m3 = (cells.size_mm * 1e-3).powi(3);
    let (mut held_j, mut poured_j, mut in_sand_j, mut hottest_c) = (0.0, 0.0, 0.0, 0.0_f64);
    for cell in 0..cells.stuff.len() {
        let celsius = f64::from(start.of_cell(cells, cell, 20.0));
        match cells.stuff[cell] {
            Stuff::Metal => {
                let m3 = cells.metal_mm3(cell) * 1e-9;
                held_j += m3 * metal.table.heat_at(celsius);
                poured_j += m3 * metal.table.heat_at(metal.poured_c);
            }
            Stuff::Air => {}
            _ => {
                in_sand_j += cell_m3 * (sand.heat_at(celsius) - sand.heat_at(20.0));
                hottest_c = hottest_c.max(celsius);
            }
        }
    }
    let lost_j = poured_j - held_j;
    assert!(lost_j > 0.0 && in_sand_j > 0.0);
    let off = in_sand_j / lost_j - 1.0;
    assert!(off.abs() < 1e-3, "{in_sand_j} of {lost_j}");
    assert!(hottest_c < 720.0, "{hottest_c}");
    // Carried to wider cells, the metal keeps its mean.
    let wide = cut(&built, &meshing, 2.0 * cells.size_mm).unwrap();
    let carried = start.carried(&meshed, &wide, 20.0);
    let off_k = carried.mean_c(&wide) - start.mean_c(&meshed);
    assert!(off_k.abs() < 1.0, "{off_k}");
}
