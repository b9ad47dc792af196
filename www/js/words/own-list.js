// The list of own paints.

import { MOST_OWN } from "../../pkg/facts.js";

export const tooManyOwn = `there is room for ${MOST_OWN} own paints: delete one first`;
