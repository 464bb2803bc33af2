/** The day as it stands on a printed sheet: 29 November 2026. */
export const today = () => new Date().toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
