-- Who keeps what lines say must know which lines ended since.

CREATE INDEX movement_ended ON movement (ended) WHERE ended IS NOT NULL;
CREATE INDEX bench_ended ON bench (ended) WHERE ended IS NOT NULL;
