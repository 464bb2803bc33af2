/** Every script of a page, but for what keeps the handbook on the reader's device. */
import "./when-to-wake.js";
import "./light-or-dark.js";
import "./widgets.js";
import "./whole-value.js";
import "./python-notice.js";
import "./kinds-of-page.js";
