// What every command calls first. (Grows: packages, system packages, runtime.)

/**
 * @param {{ window?: boolean, picture?: boolean, tests?: boolean }} _needs
 */
export async function prepare(_needs) {}
