// no-unit-test: an error without behaviour
/** What is rare, damaged or cut in a JPEG, so that its coefficients are not carried over. Never shown to people. */
export class Unusual extends Error {}
