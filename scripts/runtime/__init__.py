"""The browser's Python: made from pinned parts, stored in the site, checked by hash, ready without a network."""
