namespace PriceFloor.Api.Tests.Http.Reading;

/// <summary>A body that is accepted, for every address that reads one; tests break them.</summary>
internal static class GoodBodies
{
    private const string Json = "application/json", Lines = "application/x-ndjson", Sheet = "text/csv", Form = "multipart/form-data; boundary=cut",
        Patch = "application/merge-patch+json";

    /// <summary>Every address that reads one JSON object.</summary>
    internal static readonly (string Method, string Path, string Good)[] OfJson =
    [
        ("PUT", "/v1/profiles/new", Sample.SmallProfile),
        ("PUT", "/v1/designs/new", Sample.Pendant),
        ("PUT", "/v1/channels/new", Sample.Shop),
        ("PUT", "/v1/designs/RB-014/prices/other", """{"price":58}"""),
        ("PUT", "/v1/reading-rules/new", """{"rules":[{"textHas":"rent","least":58,"to":"business"}]}"""),
        ("PUT", "/v1/quotes/new", """{"profile":"main","channel":"web","lines":[{"quantity":6,"design":"RB-014"}]}"""),
        ("PUT", "/v1/quotes/Q-1/outcome", """{"result":"accepted"}"""),
        ("PUT", "/v1/quotes/Q-1/actual", """{"benchHours":3}"""),
        ("POST", "/v1/quotes/Q-1/revise", """{"as":"Q-1-2"}"""),
        ("POST", "/v1/quote-figures", """{"profile":"main","channel":"web","lines":[{"quantity":6,"design":"RB-014"}]}"""),
        ("PUT", "/v1/statement-layouts/card",
            """{"name":"Card","dialect":"semicolon","dateOrder":"day-month-year","amountColumn":"Value","positiveIsOut":true}"""),
        ("PUT", "/v1/plans/new", Sample.Plan),
        ("POST", "/v1/plans/main/progress", """{"through":"2027-08-31","sold":[{"sku":"RB-014","channel":"web","units":7,"net":50}]}"""),
        ("POST", "/v1/plan-months", $$"""{"plan":{{Sample.Plan}} }"""),
        ("POST", "/v1/floor-prices", """{"design":"RB-014"}"""),
        ("POST", "/v1/price-checks", """{"sku":"RB-014","channel":"web","price":58}"""),
        ("POST", "/v1/design-budgets", """{"profile":"main","channel":"web","price":58,"minutes":90}"""),
        ("POST", "/v1/quick-floor",
            """{"currency":"USD","expensesPerYear":24000,"livingPerMonth":3000,"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8,"piecesPerDay":4,"taxRate":0.2}"""),
        ("POST", "/v1/year-plans/best", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web"}]}"""),
        ("POST", "/v1/year-plans", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","units":1}]}"""),
        ("PUT", "/v1/scenarios/new",
            """{"name":"x","profile":"main","changes":[{"of":"main","at":"/calendar/weeksPerYear","by":{"low":0.9,"high":1}}]}"""),
        ("POST", "/v1/sureness", """
            {"profile":"main","sku":"RB-014","draws":1024,"ranges":[{"of":"main","at":"/calendar/weeksPerYear","by":{"low":0.9,"high":1}}]}
            """),
        ("POST", "/v1/sureness.svg", """
            {"profile":"main","sku":"RB-014","draws":1024,"ranges":[{"of":"main","at":"/calendar/weeksPerYear","by":{"low":0.9,"high":1}}]}
            """),
        ("POST", "/v1/what-ifs.svg",
            """{"profile":"main","scenarios":[{"name":"x","changes":[{"of":"main","at":"/calendar/weeksPerYear","by":0.9}]}]}"""),
        ("POST", "/v1/what-ifs",
            """{"profile":"main","scenarios":[{"name":"x","changes":[{"of":"main","at":"/calendar/weeksPerYear","by":0.9}]}]}"""),
        ("POST", "/v1/markups", """{"cost":50,"price":100}"""),
        ("POST", "/v1/break-even", """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","ratio":1}]}"""),
        ("POST", "/v1/keys", """{"name":"new","scopes":["read"]}"""),
    ];

    /// <summary>Whether an address is for the host of many studios alone.</summary>
    internal static bool IsHosts(string path) => path.StartsWith("/v1/studios", StringComparison.Ordinal);

    /// <summary>Those of a host of many studios.</summary>
    internal static readonly (string Method, string Path, string Good)[] OfHosts =
    [
        ("PUT", "/v1/studios/harbour", """{"name":"Harbour studio","limits":{"documents":5000,"keys":20}}"""),
        ("POST", "/v1/studios/harbour/keys", """{"name":"new","scopes":["read"]}"""),
    ];

    internal static readonly (string Method, string Path, string Good)[] OfJsonAnywhere = [.. OfJson, .. OfHosts];

    /// <summary>Addresses that answer a good body with 200 only if more is stored, or with 201.</summary>
    internal static readonly string[] NeedMore = ["/v1/keys", "/v1/quotes/Q-1", "/v1/quotes/Q-1/revise", "/v1/plans/main/progress", "/v1/plans/main",
        "/v1/scenarios/main", "/v1/statement-layouts/spare"];

    /// <summary>Every address that reads a body, in each format that it reads.</summary>
    internal static readonly (string Method, string Path, string Type, string Good)[] All =
    [
        .. OfJson.Select(body => (body.Method, body.Path, Json, body.Good)),
        ("POST", "/v1/designs/batch", Json,
            """[{"key":"A-1","name":"Vase","profile":"main","making":{"steps":[{"name":"blow","handsOnMinutes":9}]},"aliases":["vase 1"],"savedAt":"2027-01-02T09:00:00Z"}]"""),
        ("POST", "/v1/designs/batch", Lines, "{\"key\":\"A-1\",\"name\":\"Vase\",\"profile\":\"main\",\"making\":{\"piecesPerDay\":4}}\n"
            + "{\"key\":\"A-2\",\"profile\":\"main\",\"making\":{\"piecesPerDay\":4}}\n"),
        ("POST", "/v1/designs/batch", Sheet,
            "sku,name,profile,steps,aliases\r\nA-3,Vase,main,\"[{\"\"name\"\":\"\"blow\"\",\"\"handsOnMinutes\"\":9}]\",\"[\"\"vase 3\"\"]\"\r\n"),
        ("POST", "/v1/listed-prices/batch", Json, """[{"sku":"RB-014","channel":"web","price":58,"currency":"USD"}]"""),
        ("POST", "/v1/listed-prices/batch", Lines, "{\"sku\":\"RB-014\",\"channel\":\"web\",\"price\":58}\n"),
        ("POST", "/v1/listed-prices/batch", Sheet, "sku,channel,price\r\nRB-014,web,58.00\r\n"),
        ("POST", "/v1/price-checks/batch", Json, """[{"sku":"RB-014","channel":"web","price":58,"currency":"USD"}]"""),
        ("POST", "/v1/price-checks/batch", Lines,
            "{\"sku\":\"RB-014\",\"channel\":\"web\",\"price\":58}\n{\"sku\":\"RB-014\",\"channel\":\"web\",\"price\":1}\n"),
        ("POST", "/v1/movements/batch?source=shop", Json, """[{"ref":"1","on":"2027-01-02","sku":"RB-014","channel":"web","pieces":1,"price":58}]"""),
        ("POST", "/v1/movements/batch?source=shop", Lines,
            "{\"ref\":\"1\",\"on\":\"2027-01-02\",\"sku\":\"RB-014\",\"channel\":\"web\",\"pieces\":1,\"price\":58}\n"),
        ("POST", "/v1/movements/batch?source=shop&cancelled=void", Sheet,
            "ref,on,sku,channel,pieces,price,order,discount,status\r\n1,2027-01-02,RB-014,web,2,58.00,7,6.00,paid\r\n"
            + "2,2.1.27,RB-014,web,-1,\"$58.00\",7,,void\r\n"),
        ("POST", "/v1/movements/batch?source=till&from=2027-01-01&to=2027-01-31&channel=web", Sheet,
            "on,sku,pieces,price\r\n2027-01-02,RB-014,2,58.00\r\n"),
        ("POST", "/v1/bench-log/batch?source=book", Json, """[{"ref":"1","on":"2027-01-02","sku":"RB-014","started":12,"good":11,"minutes":792}]"""),
        ("POST", "/v1/bench-log/batch?source=book", Lines, "{\"ref\":\"1\",\"on\":\"2027-01-02\",\"minutes\":60}\n"),
        ("POST", "/v1/bench-log/batch?source=book", Sheet, "ref,on,sku,step,started,good,minutes\r\n1,2027-01-02,RB-014,torch,12,11,792.5\r\n"),
        ("PATCH", "/v1/profiles/main", Patch, """{"name":"Main, 2027","calendar":{"hoursPerDay":7.5}}"""),
        ("PATCH", "/v1/designs/RB-014", Patch, """{"name":"River drop, large"}"""),
        ("PATCH", "/v1/channels/web", Patch, """{"costPerPiece":2.1,"fees":[]}"""),
        ("PATCH", "/v1/designs/RB-014/prices/web", Patch, """{"price":61.00}"""),
        ("PATCH", "/v1/reading-rules/main", Patch, """{"rules":[]}"""),
        ("PATCH", "/v1/plans/main", Patch, """{"reserve":2500,"opening":{"cash":6500}}"""),
        ("PATCH", "/v1/quotes/Q-1", Patch, """{"price":95,"rush":null}"""),
        ("PATCH", "/v1/scenarios/main", Patch, """{"name":"A tenth dearer"}"""),
        ("PATCH", "/v1/statement-layouts/spare", Patch, """{"name":"Card","dateOrder":null}"""),
        ("PUT", "/v1/sheets/fees", Sheet, "channel,name,rate,fixed,of\r\nweb,card,0.03,0.25,paid\r\n"),
        ("PUT", "/v1/sheets/reading-rules", Sheet, "rules,textHas,paid,to,timesAYear\r\nmain,rent,out,household,12\r\n"),
        ("PUT", "/v1/sheets/channels", Sheet, "channel,name,sells,currency\r\nmarket,\"Market, Saturdays\",retail,USD\r\n"),
        ("POST", "/v1/price-checks/batch", Sheet, "sku,channel,price,note\r\nRB-014,web,58.00,\"a, b\"\r\nnone,web,1,\r\n"),
        ("POST", "/v1/order-checks", Json,
            """{"channel":"web","items":[{"sku":"RB-014","pieces":2,"price":58}],"gifts":[{"sku":"RB-014","pieces":1}],"offer":{"discountShare":0.1},"leastOrder":true}"""),
        ("POST", "/v1/order-checks", Json, """[{"channel":"web","items":[{"sku":"RB-014","pieces":2,"price":58}]}]"""),
        ("POST", "/v1/order-checks", Lines, "{\"channel\":\"web\",\"items\":[{\"sku\":\"RB-014\",\"pieces\":2,\"price\":58}]}\n"),
        ("POST", "/v1/statements?currency=USD&lines=true", Sheet,
            "Date,Description,Amount\r\n2027-01-02,Rent of the bench,-540.00\r\n2027-01-03,Sale,58.00\r\n"),
        ("POST", "/v1/statements?currency=USD&only=draft", Sheet,
            "Date,Description,Amount\r\n2027-01-02,Rent of the bench,-540.00\r\n2027-01-03,Sale,58.00\r\n"),
        ("POST", "/v1/statements?currency=USD&lines=true", Form, "--cut\r\nContent-Disposition: form-data; name=\"bank\"; filename=\"a.csv\"\r\n\r\n"
            + "Date,Description,Amount\r\n2027-01-02,Rent,-540.00\r\n\r\n--cut--\r\n"),
        ("POST", "/v1/statements?currency=USD&lines=true&account=cash-book", Sheet,
            "Date,What,In,Out,To,Cost kind\r\n2027-01-02,Pliers,,18.00,business,supplies\r\n2027-01-03,Stall,58.00,,sale,\r\n"),
        ("POST", "/v1/statements?currency=USD&lines=true", Form, "--cut\r\nContent-Disposition: form-data; name=\"card\"; filename=\"b.csv\"\r\n\r\n"
            + "When;Text;Value;Way\r\n13.01.27;Rent;$540,00;D\r\n\r\n--cut\r\nContent-Disposition: form-data; name=\"card.layout\"\r\n\r\n"
            + """{"dialect":"semicolon","dateOrder":"day-month-year","dateColumn":"When","amountColumn":"Value","directionColumn":"Way"}"""
            + "\r\n--cut--\r\n"),
        ("POST", "/v1/evidence", Sheet, "date,what,sku,channel,pieces,price,listed,order,fees\r\n2027-01-02,sold,RB-014,web,1,52.00,58.00,7,1.96\r\n"
            + "2027-01-03,returned,RB-014,web,1,52.00,,7,\r\n"),
        ("POST", "/v1/evidence?countsAsMade=true", Form, "--cut\r\nContent-Disposition: form-data; name=\"bench\"\r\n\r\n"
            + "date,sku,started,good,minutes\r\n2027-01-02,RB-014,12,11,540\r\n\r\n--cut--\r\n"),
        ("POST", "/v1/statements?currency=USD&lines=true", "application/x-ofx", "OFXHEADER:100\r\nDATA:OFXSGML\r\nCHARSET:1252\r\n\r\n<OFX>"
            + "<BANKMSGSRSV1><STMTTRNRS><STMTRS><CURDEF>USD<BANKACCTFROM><ACCTID>1</BANKACCTFROM><BANKTRANLIST><STMTTRN>"
            + "<DTPOSTED>20270102<TRNAMT>-5.00<FITID>1<NAME>Rent</STMTTRN></BANKTRANLIST></STMTRS></STMTTRNRS></BANKMSGSRSV1></OFX>"),
        ("POST", "/v1/statements?currency=USD&lines=true", "application/xml",
            """<Document xmlns="urn:iso:std:iso:20022:tech:xsd:camt.053.001.02"><BkToCstmrStmt><Stmt><Acct><Id><IBAN>X1</IBAN></Id><Ccy>USD</Ccy></Acct><Ntry><Amt Ccy="USD">5.00</Amt><CdtDbtInd>DBIT</CdtDbtInd><BookgDt><Dt>2027-01-02</Dt></BookgDt><NtryDtls><TxDtls><RmtInf><Ustrd>Rent</Ustrd></RmtInf></TxDtls></NtryDtls></Ntry></Stmt></BkToCstmrStmt></Document>"""),
    ];
}
