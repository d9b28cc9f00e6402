/**
 * Version of the core, kept with every finding it makes and printed on every sheet. It is that of the program
 * (package.json; a test holds the two together), because the core never goes out on its own.
 */
export const CORE_VERSION = '0.1.0';
