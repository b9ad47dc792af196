// A hosted page without a network, and its next version.

export const ready = "works offline";
export const newVersion = "A new version is ready.";
export const useIt = "Use it now";
