// The colour to be matched.

/** A target from CIELAB. `from` says where it comes from. */
export const targetOf = (lab, from) => ({ lab: [...lab], from });
