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
