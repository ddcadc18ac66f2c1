//! Post bases against statics by hand and against random true worlds.
