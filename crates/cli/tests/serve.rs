//! `oddside serve` where it cannot be.

mod shop;

use shop::Shop;

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
