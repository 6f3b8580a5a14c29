<?php
// Checks a sheet of listings and says which do not carry their share, then which floors moved since the last run.
//   PRICEFLOOR_URL=http://127.0.0.1:5080 PRICEFLOOR_KEY=pf_... php check-shop.php listings.csv [cursor file]
// Exit code: 0 all carry their share, 1 some do not, 2 no answer (then nothing must be held up: ask again later).
$url = getenv('PRICEFLOOR_URL') ?: 'http://127.0.0.1:5080';
[, $sheet, $cursor] = $argv + [null, 'listings.csv', null];

function ask(string $address, ?string $body = null): string {
    $headers = ['Authorization: Bearer ' . getenv('PRICEFLOOR_KEY')];
    if ($body !== null) array_push($headers, 'Content-Type: text/csv', 'Accept: application/x-ndjson');
    $options = ['method' => $body === null ? 'GET' : 'POST', 'header' => $headers, 'timeout' => 30, 'ignore_errors' => true];
    if ($body !== null) $options['content'] = $body;
    $answer = @file_get_contents($address, false, stream_context_create(['http' => $options]));
    if ($answer === false || !str_contains($http_response_header[0] ?? '', ' 200')) {
        fwrite(STDERR, 'no answer; nothing is held up: ' . ($http_response_header[0] ?? 'not reached') . "\n");
        exit(2);
    }
    return $answer;
}

$items = array_slice(array_map(fn($row) => str_getcsv($row, ',', '"', '')[0], file($sheet, FILE_IGNORE_NEW_LINES)), 1);
$lines = explode("\n", trim(ask("$url/v1/price-checks/batch?skuColumn=Item&channelColumn=Shop&priceColumn=List%20price", file_get_contents($sheet))));
array_pop($lines); // the summary
$below = false;
foreach ($lines as $i => $line) {
    $answer = json_decode($line, true);
    if (!isset($answer['verdict'])) {
        echo "$items[$i] was not answered: $answer[detail]\n";
    } elseif (!$answer['carriesItsShare']) {
        $below = true;
        // Prices as the text they came as: json_decode makes floats of them.
        preg_match('/"floorPrice":([0-9.]+),"targetPrice":([0-9.]+)/', $line, $price);
        echo "$items[$i] does not carry its share: floor $price[1], target $price[2]\n";
    }
}

if ($cursor !== null) {
    $since = file_exists($cursor) ? trim(file_get_contents($cursor)) : '';
    $changes = json_decode(ask("$url/v1/floor-changes" . ($since === '' ? '' : "?since=$since")), true);
    if ($since !== '') echo count($changes['items']), " floors moved since the last run\n";
    file_put_contents($cursor, $changes['next']);
}
exit($below ? 1 : 0);
