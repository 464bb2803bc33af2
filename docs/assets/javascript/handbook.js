/** Every script of a page, but for what keeps the handbook on the reader's device. */
import "./python/when-to-wake.js";
import "./pages/found-part.js";
import "./pages/light-or-dark.js";
import "./calculator/strip.js";
import "./calculator/job-measures.js";
import "./calculator/widgets.js";
import "./pages/in-hand-line.js";
import "./calculator/whole-value.js";
import "./calculator/next-blank.js";
import "./calculator/length-keys.js";
import "./keeping/keeping-notice.js";
import "./notices/python-notice.js";
import "./pages/kinds-of-page.js";
import "./pages/tables-that-scroll.js";
import "./pages/left-behind.js";
import "./printing/every-fold.js";
import "./printing/sheet-head.js";
