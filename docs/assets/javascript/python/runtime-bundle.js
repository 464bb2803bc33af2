// Which Python runtime belongs to this copy of the site. The build writes the real list over this file;
// a site built without a runtime keeps this empty one, and its calculators show their worked answers only.
export default null;
