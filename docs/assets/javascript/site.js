/** Where the handbook lies: the build lays every script, this one too, into assets/javascript/ of the site. */
export const SITE = new URL("../../", import.meta.url);

/** Whether it is opened from a disk, without a server. */
export const isOnDisk = SITE.protocol === "file:";

/** The path at which it lies, for links. */
export const PLACE = SITE.pathname;

/**
 * What browsers keep is kept under this, since several handbooks may live on one host. A copy on a disk has one name
 * wherever it lies: under another drive letter, or in another folder, it finds what was kept.
 */
export const KEPT_UNDER = isOnDisk ? "/copy on a disk/" : PLACE;

/** The address of a page. @param {string} place such as house/jobs/ */
export const addressOf = (place) => new URL(isOnDisk ? `${place}index.html` : place, SITE);
