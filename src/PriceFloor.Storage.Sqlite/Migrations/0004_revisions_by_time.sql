-- A document as it was at a moment is found without walking back through its history. Times never go back, so that their order is that of numbers.
CREATE INDEX revision_at ON revision (kind, key, saved_at, number);
