//! What a file may not say, and that the error names the place and the way out.

use conduct::answer::run;
use conduct::reading::read;

const SOUND: &str = r#"
title = "a block in a box"
[box]
x = [{ to_mm = 40, cells = 4 }]
y = [{ to_mm = 40, cells = 4 }]
z = [{ to_mm = 40, cells = 4 }]
[materials.metal]
solid = { j_m3k = 2.7e6, w_mk = 150 }
liquid = { j_m3k = 2.7e6, w_mk = 90 }
latent_j_m3 = 9.7e8
solidus_c = 555
liquidus_c = 615
[materials.sand]
plain = { j_m3k = 1.7e6, w_mk = 0.6 }
[voids.air]
w_m2k = 10
surroundings_c = 20
[[fill]]
with = "sand"
start_c = 25
[[fill]]
with = "metal"
start_c = 700
block_mm = [[10, 10, 10], [30, 30, 30]]
[[fill]]
with = "air"
block_mm = [[10, 10, 30], [30, 30, 40]]
[[contact]]
between = ["metal", "sand"]
w_m2k = 500
[run]
until_s = 10
moments_s = [5]
[[probe]]
name = "middle"
at_mm = [20, 20, 20]
[[front]]
name = "edge"
along = "x"
through_mm = [0, 20, 20]
material = "metal"
[[expect]]
probe = "middle"
at_s = 5
is = 640
within = 100
"#;

#[test]
fn a_sound_file_is_answered() {
    let bare = read(SOUND).unwrap();
    let answer = run(&bare, &mut |_| true).unwrap();
    assert_eq!(answer.moments.len(), 2);
    assert_eq!(answer.expected.len(), 1);
    assert!(answer.heat.through_j < 0.0, "it loses heat to the air");
}

#[test]
fn a_stopped_run_says_where() {
    let bare = read(SOUND).unwrap();
    let mut steps = 0;
    let stopped = run(&bare, &mut |_| {
        steps += 1;
        steps < 3
    });
    assert!(stopped.unwrap_err().to_string().contains("stopped at"));
}

#[test]
fn slips_are_named() {
    for (sound, slip, says) in [
        (
            "until_s = 10",
            "until_s = 10\nuntil_solid_s = 10",
            "either until_s or until_solid_s",
        ),
        ("until_s = 10", "until_s = 1e13", "would take about"),
        (
            "until_s = 10",
            "until_s = -1",
            "the end has to be a time above 0 s",
        ),
        (
            "moments_s = [5]",
            "moments_s = [5, 3]",
            "each later than the one before",
        ),
        (
            "to_mm = 40, cells = 4",
            "to_mm = 40, cells = 0",
            "at least one cell",
        ),
        (
            "to_mm = 40, cells = 4",
            "to_mm = 40, cells = 4000000000000",
            "GiB of memory",
        ),
        (
            "to_mm = 40, cells = 4",
            "to_mm = -40, cells = 4",
            "ends beyond the one before",
        ),
        (
            "with = \"metal\"",
            "with = \"mettle\"",
            "there is no \"mettle\"",
        ),
        (
            "start_c = 700",
            "start_c = -300",
            "no temperature to start from",
        ),
        ("start_c = 25\n", "", "a material has a start_c"),
        (
            "with = \"sand\"\nstart_c = 25",
            "with = \"sand\"\nstart_c = 25\noutside = true",
            "nothing fills",
        ),
        (
            "plain = {",
            "latent_j_m3 = 1\nplain = {",
            "[materials.sand]: give either",
        ),
        ("w_mk = 0.6", "w_mk = 0", "the conductivity above zero"),
        ("w_m2k = 10", "held_c = 10", "[voids.air]: give held_c, or"),
        ("w_m2k = 500", "w_m2k = -500", "a conductance above zero"),
        ("solidus_c = 555", "solidus_c = 655", "may not fall"),
        (
            "at_mm = [20, 20, 20]",
            "at_mm = [20, 20, 50]",
            "outside the box",
        ),
        (
            "material = \"metal\"",
            "material = \"metal\"\ncelsius = 3",
            "either material or celsius",
        ),
        (
            "probe = \"middle\"",
            "probe = \"muddle\"",
            "there is no \"muddle\"",
        ),
        ("at_s = 5", "at_s = 6", "one of the moments_s"),
        (
            "[materials.metal]",
            "mirrored = [\"x_low\", \"x_high\"]\n[materials.metal]",
            "[box] mirrored: x_low",
        ),
        (
            "[materials.metal]",
            "mirrored = [\"y_low\"]\n[faces]\ny_low = { held_c = 3 }\n[materials.metal]",
            "has a condition under [faces]",
        ),
        (
            "[materials.metal]",
            "mirrored = [\"middle\"]\n[materials.metal]",
            "unknown variant `middle`",
        ),
        ("[run]", "[run]\nfast = true", "unknown field `fast`"),
        ("title = \"a block in a box\"", "title = 3", "invalid type"),
    ] {
        assert!(SOUND.contains(sound), "{sound}");
        let text = SOUND.replace(sound, slip);
        let told = match read(&text) {
            Err(error) => error.to_string(),
            Ok(bare) => match run(&bare, &mut |_| true) {
                Err(error) => error.to_string(),
                Ok(_) => "taken".to_owned(),
            },
        };
        assert!(told.contains(says), "{slip}: {told}");
    }
}
