/** How many releases a statement on the rest takes. */

/**
 * Fewest releases for a statement beyond what was seen: the table of tolerance factors begins here. A bench may
 * ask for more (`StickEvidence.releasesNeeded`), never for fewer.
 */
export const LEAST_RELEASES = 12;
