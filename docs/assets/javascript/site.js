/** Where the handbook lies: the build lays every script, this one too, into assets/javascript/ of the site. */
export const SITE = new URL("../../", import.meta.url);

/** What browsers keep is kept under this, since several handbooks may live on one host. */
export const PLACE = SITE.pathname;
