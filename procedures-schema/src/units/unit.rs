//! The closed list of units, each with its UCUM code and the kind of quantity it measures.
//!
//! Source of the codes: The Unified Code for Units of Measure (UCUM), case-sensitive form.
//! A code that is not in the list is kept as it stands and measures nothing that can be compared.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// What a unit measures. Torque is not energy, although both are newton metres.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Quantity {
    /// Gauge or differential pressure.
    Pressure,
    /// Tightening torque.
    Torque,
    /// Length.
    Length,
    /// Mass.
    Mass,
    /// Thermodynamic temperature on the Celsius or Fahrenheit scale.
    Temperature,
    /// Duration.
    Time,
    /// Electrical potential difference.
    Voltage,
    /// Electrical current.
    Current,
    /// Electrical resistance.
    Resistance,
    /// Volume.
    Volume,
    /// Volume flow.
    VolumeFlow,
    /// Power or heat input.
    Power,
    /// Fraction.
    Fraction,
    /// A unit outside the list: kept, never compared.
    Unknown,
}

macro_rules! units {
    ($($(#[doc = $doc:literal])+ $variant:ident = $code:literal, $shown:literal, $quantity:ident;)*) => {
        /// A unit of measurement.
        #[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Unit {
            $($(#[doc = $doc])+ $variant,)*
            /// A code outside the list, kept as it stands.
            Other(Box<str>),
        }

        impl Unit {
            /// Every unit of the list, in its order.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)*];

            /// The unit with this UCUM code; a code outside the list gives [`Unit::Other`].
            pub fn from_code(code: &str) -> Self {
                match code { $($code => Self::$variant,)* other => Self::Other(other.into()) }
            }

            /// The UCUM code, as files hold it.
            pub fn code(&self) -> &str {
                match self { $(Self::$variant => $code,)* Self::Other(code) => code }
            }

            /// The unit as people write it, for example `N·m`.
            pub fn shown(&self) -> &str {
                match self { $(Self::$variant => $shown,)* Self::Other(code) => code }
            }

            /// What the unit measures.
            pub fn quantity(&self) -> Quantity {
                match self { $(Self::$variant => Quantity::$quantity,)* Self::Other(_) => Quantity::Unknown }
            }
        }

        #[cfg(feature = "cli")]
        impl schemars::JsonSchema for Unit {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                "Unit".into()
            }

            fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                schemars::json_schema!({
                    "description": "A unit by its UCUM code.",
                    "anyOf": [
                        $({ "const": $code, "description": concat!($($doc),+).trim() },)*
                        { "type": "string", "description": "A unit outside the list: kept, never compared." },
                    ],
                })
            }
        }
    };
}

units! {
    /// Bar, 100 kPa.
    Bar = "bar", "bar", Pressure;
    /// Millibar.
    Millibar = "mbar", "mbar", Pressure;
    /// Kilopascal.
    Kilopascal = "kPa", "kPa", Pressure;
    /// Pascal.
    Pascal = "Pa", "Pa", Pressure;
    /// Pound-force per square inch.
    Psi = "[psi]", "psi", Pressure;
    /// Inch of water column at 1000 kg/m³ and standard gravity.
    InchOfWater = "[in_i'H2O]", "inWC", Pressure;
    /// Newton metre of torque.
    NewtonMetre = "N.m", "N·m", Torque;
    /// Pound-force foot of torque.
    PoundForceFoot = "[lbf_av].[ft_i]", "lbf·ft", Torque;
    /// Millimetre.
    Millimetre = "mm", "mm", Length;
    /// Metre.
    Metre = "m", "m", Length;
    /// International inch.
    Inch = "[in_i]", "in", Length;
    /// Kilogram.
    Kilogram = "kg", "kg", Mass;
    /// Avoirdupois pound.
    Pound = "[lb_av]", "lb", Mass;
    /// Degree Celsius.
    Celsius = "Cel", "°C", Temperature;
    /// Degree Fahrenheit.
    Fahrenheit = "[degF]", "°F", Temperature;
    /// Second.
    Second = "s", "s", Time;
    /// Minute.
    Minute = "min", "min", Time;
    /// Hour.
    Hour = "h", "h", Time;
    /// Volt.
    Volt = "V", "V", Voltage;
    /// Ampere.
    Ampere = "A", "A", Current;
    /// Ohm.
    Ohm = "Ohm", "Ω", Resistance;
    /// Megohm.
    Megohm = "MOhm", "MΩ", Resistance;
    /// Litre.
    Litre = "L", "l", Volume;
    /// Cubic metre.
    CubicMetre = "m3", "m³", Volume;
    /// Litre per minute.
    LitrePerMinute = "L/min", "l/min", VolumeFlow;
    /// Cubic metre per hour.
    CubicMetrePerHour = "m3/h", "m³/h", VolumeFlow;
    /// Kilowatt.
    Kilowatt = "kW", "kW", Power;
    /// Per cent.
    PerCent = "%", "%", Fraction;
    /// Parts per million.
    PartsPerMillion = "[ppm]", "ppm", Fraction;
}

impl Serialize for Unit {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.code())
    }
}

impl<'de> Deserialize<'de> for Unit {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Ok(Self::from_code(&String::deserialize(deserializer)?))
    }
}

#[cfg(test)]
mod tests {
    use super::Unit;

    #[test]
    fn codes_are_inverse() {
        for unit in Unit::ALL {
            assert_eq!(&Unit::from_code(unit.code()), unit);
        }
        assert_eq!(Unit::from_code("furlong").code(), "furlong");
    }
}
