//! Control charts.
