//! `oddside serve` where it cannot be.

mod shop;

use shop::Shop;

/// How a freezing that was asked for on the page is marked in its folder.
const ASKED: &str = r#"{"cells":20000.0,"on":"faster"}"#;

#[test]
fn a_folder_that_is_none_or_a_job_is_told_and_nothing_is_served() {
    let shop = Shop::new();
    shop.example("featured_block_inches.stl", "name = \"block\"\n");
    shop.run(&["serve", "nowhere", "--port", "0"])
        .ends_with(2)
        .talks("nowhere is no folder");
    shop.run(&["serve", "job", "--port", "0"])
        .ends_with(2)
        .talks("give the folder in which it lies");
}

#[test]
fn a_port_that_is_taken_is_told() {
    let shop = Shop::new();
    let taken = std::net::TcpListener::bind("127.0.0.1:0").expect("a port");
    let port = taken.local_addr().expect("its address").port().to_string();
    shop.run(&["serve", ".", "--port", &port])
        .ends_with(1)
        .talks("give another with --port");
}

#[test]
fn phones_come_in_from_home_only() {
    let shop = Shop::new();
    shop.run(&["serve", ".", "--port", "0", "--lan", "8.8.8.8"])
        .ends_with(2)
        .talks("8.8.8.8 is no address of a local network");
    shop.run(&["serve", ".", "--port", "0", "--lan", "bench"])
        .ends_with(2)
        .talks("\"bench\" is no address");
    let taken = std::net::TcpListener::bind("127.0.0.1:0").expect("a port");
    let address = taken.local_addr().expect("its address").to_string();
    shop.run(&["serve", ".", "--port", "0", "--lan", &address])
        .ends_with(1)
        .talks("name another port");
}

#[test]
fn phones_are_listed_and_one_that_is_none_is_not_removed() {
    let shop = Shop::new();
    shop.run(&["phones", "list"])
        .ends_with(0)
        .talks("no phone is paired");
    shop.run(&["phones", "add"])
        .ends_with(0)
        .talks("good for 10 minutes: ");
    shop.run(&["phones", "remove", "the old one"])
        .ends_with(2)
        .talks("no phone is called \"the old one\": none is paired");
    shop.run(&["phones"]).ends_with(64);
}

/// What the page asked for is still under way when the program is killed: the next one goes on by
/// itself, with nobody looking.
#[test]
fn a_freezing_that_a_kill_cut_off_goes_on() {
    let shop = Shop::new();
    let job = "name = \"block\"\n[part]\nmesh = \"featured_block_inches.stl\"\nunit = \"in\"\n[metal]\nalloy = \"A356\"\n";
    shop.example("featured_block_inches.stl", job);
    let freeze = shop.path().join("job/freeze");
    std::fs::create_dir_all(&freeze).expect("a folder");
    std::fs::write(freeze.join("asked-on-the-page"), ASKED).expect("a mark");
    let mut server = std::process::Command::new(env!("CARGO_BIN_EXE_oddside"))
        .args(["serve", ".", "--port", "0"])
        .current_dir(shop.path())
        .stdout(std::process::Stdio::null())
        .spawn()
        .expect("a server");
    let is_over =
        || freeze.join("findings.json").is_file() && !freeze.join("asked-on-the-page").exists();
    for _ in 0..1200 {
        if is_over() {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(100));
    }
    server.kill().expect("a kill");
    server.wait().expect("its end");
    assert!(is_over());
}
