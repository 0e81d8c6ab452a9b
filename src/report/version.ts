/** The version of the library that a report names; a test holds it to package.json. */
export const version = '0.1.0';
