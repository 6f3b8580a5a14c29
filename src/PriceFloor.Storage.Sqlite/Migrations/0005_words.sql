-- Fields of stored documents that were renamed before the first release. A quotation mark inside a text is escaped, so only names of fields match.
UPDATE revision SET body = replace(body, '"heading":', '"costKind":') WHERE kind IN ('profile', 'reading-rules') AND body LIKE '%"heading":%';
UPDATE revision SET body = replace(body, '"rushable":', '"mayBeHurried":') WHERE kind = 'design' AND body LIKE '%"rushable":%';
UPDATE revision SET body = replace(replace(body, '"stockistShare":', '"shopShare":'), '"event":', '"stall":')
    WHERE kind = 'channel' AND (body LIKE '%"stockistShare":%' OR body LIKE '%"event":%');
