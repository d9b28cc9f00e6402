// Names for quantities. They are plain numbers to the compiler and a promise to the reader: inside core every value
// is in the unit its type says, and a name that leaves core (JSON, records, CSV) carries its unit: startS, riseC.

/** Time in seconds from the start of the capture, unless a docstring says otherwise. */
export type Seconds = number;
/** Frequency in hertz. */
export type Hertz = number;
/** Electric potential in volts. */
export type Volts = number;
/** Temperature in degrees Celsius. */
export type Celsius = number;
/** Difference of two temperatures in kelvin; never converted with the 32 °F or 273.15 K offset. */
export type KelvinDifference = number;
/** Engine speed in revolutions a minute. */
export type RevolutionsPerMinute = number;
/** Road speed in kilometres an hour. */
export type KilometresPerHour = number;
/** Mass flow in grams a second. */
export type GramsPerSecond = number;
/** Mass in grams. */
export type Grams = number;
/** A share of one, 0 to 1. */
export type Share = number;
/** Per cent, 0 to 100 for shares, signed for fuel trims. */
export type Percent = number;
/** Index of a sample in its own channel, from 0. */
export type SampleIndex = number;
