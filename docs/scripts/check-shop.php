<?php
// Checks a sheet of listings and says which do not carry their share, then which floors moved since the last run.
//   PRICEFLOOR_URL=http://127.0.0.1:5080 PRICEFLOOR_KEY=pf_... php check-shop.php listings.csv [cursor file]
// Exit code: 0 none is below its floor, 1 some are, 2 no answer (hold nothing up, ask again later), 3 the key, 4 refused otherwise.
$url = getenv('PRICEFLOOR_URL') ?: 'http://127.0.0.1:5080';
[, $sheet, $cursor] = $argv + [null, 'listings.csv', null];

function finish(int $code, string $why): never {
    fwrite(STDERR, "$why\n");
    exit($code);
}

function reason(array $problem): string {
    return implode(' ', array_map(fn($error) => $error['detail'] ?? '', $problem['errors'] ?? [$problem]));
}

/** The answer; null for a cursor that is refused. */
function ask(string $address, ?string $body = null): ?string {
    $headers = ['Authorization: Bearer ' . getenv('PRICEFLOOR_KEY')];
    if ($body !== null) array_push($headers, 'Content-Type: text/csv', 'Accept: application/x-ndjson');
    $options = ['method' => $body === null ? 'GET' : 'POST', 'header' => $headers, 'timeout' => 30, 'ignore_errors' => true];
    if ($body !== null) $options['content'] = $body;
    $answer = @file_get_contents($address, false, stream_context_create(['http' => $options]));
    $status = (int) (explode(' ', $http_response_header[0] ?? '')[1] ?? 0);
    if ($answer !== false && $status === 200) return $answer;
    $problem = json_decode((string) $answer, true) ?? [];
    $why = reason($problem);
    if ($status === 401) finish(3, "no key that is known (401): $why Set PRICEFLOOR_KEY to a key with the scope check.");
    if ($status === 403) finish(3, "the key may not do this (403): $why Set PRICEFLOOR_KEY to a key with the scope check.");
    if ($answer === false) finish(2, 'no answer; nothing is held up: not reached');
    if ($status === 408 || $status === 429 || $status >= 500) finish(2, "no answer; nothing is held up: $status $why");
    if (($problem['errors'][0]['code'] ?? '') === 'unknown-cursor') return null;
    finish(4, "refused: $status $why");
}

$rows = @file_get_contents($sheet);
if ($rows === false) finish(4, "$sheet cannot be read");
$lines = explode("\n", trim(ask("$url/v1/price-checks/batch?skuColumn=Item&channelColumn=Shop&priceColumn=List%20price", $rows)));
if (!str_starts_with(array_pop($lines), '{"summary"')) finish(2, 'no answer; nothing is held up: it was cut short');
$below = false;
foreach ($lines as $line) {
    $answer = json_decode($line, true);
    // A row of the sheet may have several lines, so an answer is named by its own sku and channel.
    $name = ($answer['sku'] ?? "line {$answer['errors'][0]['line']}") . (isset($answer['channel']) ? " on $answer[channel]" : '');
    if (!isset($answer['verdict'])) {
        echo "$name was not answered: ", reason($answer), "\n";
    } elseif (!$answer['carriesItsShare']) {
        $below = true;
        // Prices as the text they came as: json_decode makes floats of them.
        $prices = preg_match('/"floorPrice":([0-9.]+),"targetPrice":([0-9.]+)/', $line, $price) ? ": floor $price[1], target $price[2]" : '';
        echo "$name does not carry its share$prices\n";
    }
}

if ($cursor !== null) {
    $since = file_exists($cursor) ? trim(file_get_contents($cursor)) : '';
    $text = ask("$url/v1/floor-changes" . ($since === '' ? '' : "?since=$since"));
    $told = $text === null ? 'the cursor is not of this store; begun again with %d floors' : '%d floors moved since the last run';
    $changes = json_decode($text ?? ask("$url/v1/floor-changes"), true);
    if ($since !== '') printf("$told\n", count($changes['items']));
    // By rename, so a run that is cut short leaves a whole cursor.
    if (@file_put_contents("$cursor.new", $changes['next']) === false || !rename("$cursor.new", $cursor)) finish(4, "$cursor cannot be written");
}
exit($below ? 1 : 0);
