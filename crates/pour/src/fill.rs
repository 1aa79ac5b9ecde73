//! Filling at a glance: what the metal does while it runs in, found in a blink.

pub mod network;
