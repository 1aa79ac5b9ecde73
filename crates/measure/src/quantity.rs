//! The macros that make one quantity, and the products between quantities that mean something.

/// Makes a quantity: a number of SI units behind a name, with its units named where it enters
/// (`from_mm`) and where it leaves (`as_mm`).
macro_rules! quantity {
    (
        $(#[$about:meta])*
        $name:ident: $what:literal, $example:literal {
            $( $(#[$unit_about:meta])* $from:ident, $get:ident = $si:expr; )+
        }
        written { $( $system:ident $words:expr => $factor:expr, )+ }
    ) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// None of it.
            pub const ZERO: $name = $name(0.0);

            $(
                $(#[$unit_about])*
                pub const fn $from(amount: f64) -> $name {
                    $name(amount * $si)
                }

                $(#[$unit_about])*
                pub const fn $get(self) -> f64 {
                    self.0 / $si
                }
            )+

            /// The larger of the two.
            pub fn max(self, other: $name) -> $name {
                $name(self.0.max(other.0))
            }

            /// The smaller of the two.
            pub fn min(self, other: $name) -> $name {
                $name(self.0.min(other.0))
            }
        }

        impl $crate::text::Written for $name {
            const WHAT: &'static str = $what;
            const EXAMPLE: &'static str = $example;
            const UNITS: &'static [$crate::text::UnitWord] = &[
                $( $crate::text::UnitWord {
                    words: $words,
                    si: $factor,
                    offset: 0.0,
                    system: $crate::text::System::$system,
                }, )+
            ];

            fn from_si(amount: f64) -> $name {
                $name(amount)
            }

            fn si(self) -> f64 {
                self.0
            }
        }

        impl std::ops::Add for $name {
            type Output = $name;
            fn add(self, other: $name) -> $name {
                $name(self.0 + other.0)
            }
        }

        impl std::ops::Sub for $name {
            type Output = $name;
            fn sub(self, other: $name) -> $name {
                $name(self.0 - other.0)
            }
        }

        impl std::ops::AddAssign for $name {
            fn add_assign(&mut self, other: $name) {
                self.0 += other.0;
            }
        }

        impl std::ops::Mul<f64> for $name {
            type Output = $name;
            fn mul(self, times: f64) -> $name {
                $name(self.0 * times)
            }
        }

        impl std::ops::Mul<$name> for f64 {
            type Output = $name;
            fn mul(self, of: $name) -> $name {
                $name(self * of.0)
            }
        }

        impl std::ops::Div<f64> for $name {
            type Output = $name;
            fn div(self, by: f64) -> $name {
                $name(self.0 / by)
            }
        }

        impl std::ops::Div for $name {
            type Output = f64;
            fn div(self, by: $name) -> f64 {
                self.0 / by.0
            }
        }

        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = $name>>(all: I) -> $name {
                all.fold($name::ZERO, |total, one| total + one)
            }
        }
    };
}

/// Says which products exist: `a * b = c` gives both orders and both quotients.
macro_rules! products {
    ($( $a:ident * $b:ident = $c:ident; )+) => { $(
        impl std::ops::Mul<$b> for $a {
            type Output = $c;
            fn mul(self, other: $b) -> $c {
                <$c as $crate::text::Written>::from_si(
                    $crate::text::Written::si(self) * $crate::text::Written::si(other),
                )
            }
        }

        impl std::ops::Div<$b> for $c {
            type Output = $a;
            fn div(self, by: $b) -> $a {
                <$a as $crate::text::Written>::from_si(
                    $crate::text::Written::si(self) / $crate::text::Written::si(by),
                )
            }
        }
    )+ };
}

pub(crate) use {products, quantity};
