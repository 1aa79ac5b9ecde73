//! The built-in table: whole, sourced, and found by the names people type.

use metal::alloy::{Family, Freezing, read};
use metal::alloys::{all, faults, named, names, plain};
use metal::furnace::{self, Furnace};

#[test]
fn every_file_of_the_table_can_be_read() {
    assert_eq!(faults(), &[]);
    assert_eq!(all().len(), 17);
}

#[test]
fn a_spoilt_file_is_a_fault_that_names_file_and_figure() {
    let good = include_str!("../data/alloys/al-si7-mg.toml");
    assert!(read("al-si7-mg.toml", good).is_ok());
    for (from, to, says) in [
        ("2.67 g/cm3", "2.67", "density_solid"),
        ("2.67 g/cm3", "3.67 g/cm3", "not in order"),
        ("5.2 %", "5.2", "freezing_shrinkage"),
        ("5.2 %", "520 %", "freezing_shrinkage"),
        (
            "source = [\"shop-handbook-figures\", \"asm-handbook-2\", \"makeitfrom-aluminium\"]",
            "source = []",
            "no source",
        ),
        ("1:4:4", "1:4", "1:4"),
        ("\"middle\"", "\"soft\"", "soft"),
        ("likely = \"614 C\"", "", "\"likely\" is missing"),
    ] {
        let spoilt = good.replacen(from, to, 1);
        let fault = read("al-si7-mg.toml", &spoilt).unwrap_err().to_string();
        assert!(fault.contains("al-si7-mg.toml"), "{fault}");
        assert!(fault.contains(says), "{fault} should say {says}");
    }
}

#[test]
fn every_figure_names_a_source_of_the_bibliography() {
    for alloy in all() {
        let mut keys: Vec<&str> = Vec::new();
        for sources in [
            &alloy.density_solid.sources,
            &alloy.density_liquid.sources,
            &alloy.solidus.sources,
            &alloy.liquidus.sources,
            &alloy.specific_heat_solid.sources,
            &alloy.specific_heat_liquid.sources,
            &alloy.latent_heat.sources,
            &alloy.conductivity_solid.sources,
            &alloy.conductivity_liquid.sources,
            &alloy.solid_share.sources,
            &alloy.freezing_shrinkage.sources,
            &alloy.liquid_contraction.sources,
            &alloy.pouring_light.sources,
            &alloy.pouring_heavy.sources,
            &alloy.entry_speed.sources,
        ] {
            assert!(!sources.is_empty(), "{}", alloy.name);
            keys.extend(sources.iter().map(String::as_str));
        }
        keys.extend(alloy.contraction.iter().map(|given| given.source.as_str()));
        keys.extend(alloy.running.iter().map(|ratio| ratio.source.as_str()));
        for key in keys {
            assert!(
                measure::source::source(key).is_some(),
                "{}: {key}",
                alloy.name
            );
        }
    }
}

#[test]
fn every_law_names_its_own_path_and_known_sources() {
    for law in metal::LAWS {
        assert!(law.name.starts_with("metal::"), "{}", law.name);
        assert!(!law.sources.is_empty(), "{}", law.name);
        for key in law.sources {
            assert!(
                measure::source::source(key).is_some(),
                "{}: {key}",
                law.name
            );
        }
    }
}

#[test]
fn no_two_alloys_share_a_name() {
    let mut seen: Vec<String> = all().iter().flat_map(names).map(plain).collect();
    seen.sort();
    let before = seen.len();
    seen.dedup();
    assert_eq!(seen.len(), before);
}

#[test]
fn names_are_found_however_they_are_typed() {
    for (typed, name) in [
        ("aluminum", "Al-Si7-Mg"),
        ("a356", "Al-Si7-Mg"),
        ("LM 25", "Al-Si7-Mg"),
        ("al si7 mg", "Al-Si7-Mg"),
        ("Gunmetal", "Gunmetal 85-5-5-5"),
        ("red-brass", "Gunmetal 85-5-5-5"),
        ("BRONZE", "Tin bronze 88-10-2"),
        ("siliconbronze", "Silicon bronze"),
        ("brass", "Yellow brass"),
        ("zinc", "Zamak 3"),
        ("gray iron", "Grey iron"),
        ("iron", "Grey iron"),
    ] {
        assert_eq!(named(typed).unwrap().name, name, "{typed}");
    }
}

#[test]
fn an_unknown_name_gets_the_nearest_or_the_list() {
    let near = named("gunmetel").unwrap_err();
    assert_eq!(near.nearest, Some("gunmetal"));
    let far = named("unobtainium").unwrap_err();
    assert_eq!(far.nearest, None);
    assert!(far.advice.contains("Grey iron"));
    assert!(named("").is_err());
    assert!(named("--").is_err());
}

#[test]
fn the_round_figures_of_the_trade_lie_in_the_bands() {
    for (name, solid, liquid) in [
        ("Al-Si7-Mg", 2.67, 2.38),
        ("gunmetal", 8.80, 7.95),
        ("silicon bronze", 8.36, 7.70),
        ("grey iron", 7.15, 6.90),
        ("yellow brass", 8.45, 7.80),
    ] {
        let alloy = named(name).unwrap();
        let holds = |band: measure::band::Band<measure::matter::Density>, figure: f64| {
            band.low().as_g_per_cm3() <= figure + 1e-9
                && figure <= band.high().as_g_per_cm3() + 1e-9
        };
        assert!(holds(alloy.density_solid.band, solid), "{name} solid");
        assert!(holds(alloy.density_liquid.band, liquid), "{name} liquid");
    }
}

#[test]
fn figures_of_an_alloy_agree_with_one_another() {
    for alloy in all() {
        let name = &alloy.name;
        assert!(
            alloy.solidus.band.likely() <= alloy.liquidus.band.likely(),
            "{name}"
        );
        let liquid = alloy.density_liquid.band.likely();
        assert!(liquid < alloy.density_solid.band.likely(), "{name}");
        let (light, heavy) = (&alloy.pouring_light.band, &alloy.pouring_heavy.band);
        assert!(heavy.likely() < light.likely(), "{name}");
        assert!(alloy.liquidus.band.likely() <= heavy.likely(), "{name}");
        let range = alloy.freezing_range().as_kelvin();
        let fits = match alloy.freezing {
            Freezing::Short => range < 50.0,
            Freezing::Middle => (30.0..=110.0).contains(&range),
            Freezing::Long => range > 110.0,
        };
        assert!(fits, "{name}: {range} K is not {:?}", alloy.freezing);
    }
}

#[test]
fn only_grey_iron_feeds_itself() {
    for alloy in all() {
        let feeds = alloy.feeds_itself.is_some();
        assert_eq!(feeds, alloy.family == Family::Iron, "{}", alloy.name);
    }
    let iron = named("iron").unwrap();
    assert!(iron.freezing_shrinkage.band.low() < 0.0);
    let feeding = iron.feeds_itself.as_ref().unwrap();
    assert!((feeding.carbon_equivalent.band.likely() - 0.042).abs() < 1e-12);
}

#[test]
fn disagreeing_contractions_are_all_kept() {
    let aluminium = named("aluminium").unwrap();
    let band = aluminium.contraction_band().unwrap();
    assert!(band.low() < 0.0105 && band.high() > 0.018, "{band:?}");
    assert!((band.likely() - 0.0125).abs() < 1e-12);
    for alloy in all() {
        assert!(alloy.contraction_band().is_some(), "{}", alloy.name);
    }
}

#[test]
fn the_preferred_running_system_suits_the_metal() {
    let preferred = |name: &str| named(name).unwrap().running[0].pressurised();
    assert!(!preferred("aluminium"));
    assert!(!preferred("aluminium bronze"));
    assert!(preferred("grey iron"));
}

#[test]
fn the_table_of_furnaces_can_be_read_and_is_sourced() {
    let rows = furnace::read(furnace::BUILT_IN).unwrap();
    assert_eq!(rows.as_slice(), furnace::all());
    for row in furnace::all() {
        let efficiency = row.efficiency.iter().flat_map(|figure| &figure.sources);
        for key in row.loss.sources.iter().chain(efficiency) {
            assert!(measure::source::source(key).is_some(), "{key}");
        }
    }
    let gas = furnace::practice(Furnace::FuelCrucible, Family::Aluminium).unwrap();
    assert!((gas.loss.band.low() - 0.04).abs() < 1e-12);
    assert!((gas.loss.band.high() - 0.06).abs() < 1e-12);
    assert!(furnace::practice(Furnace::Cupola, Family::Aluminium).is_none());
}
