namespace PriceFloor.Api.Tests;

/// <summary>Documents for tests.</summary>
public static class Sample
{
    /// <summary>600 pendants at their listed price, most of them before Christmas.</summary>
    public const string Plan =
        """{"profile":"main","lines":[{"sku":"RB-014","channel":"web","units":600,"season":"gifts"}],"seasons":{"gifts":[4,5,6,6,8,6,5,5,7,10,19,19]}}""";

    public const string SmallProfile =
        """{"currency":"USD","yearStart":"2027-01-01","calendar":{"weeksPerYear":50,"daysPerWeek":5,"hoursPerDay":8},"expenses":[{"amount":24000,"per":"year"}],"household":[{"amount":3000,"per":"month"}]}""";

    public const string Pendant = """{"profile":"main","making":{"piecesPerDay":4}}""";

    public const string Shop = """{"sells":"retail","currency":"USD","fees":[{"name":"card","rate":0.024,"fixed":0.25,"of":"paid"}]}""";

    public const string Rich = """
        { "name": "Year 2027", "currency": "USD", "yearStart": "2027-01-01",
          "calendar": { "weeksPerYear": 48, "daysPerWeek": 5, "hoursPerDay": 8, "benchShare": 0.65 },
          "expenses": [ { "name": "Bench rent", "amount": 540, "per": "month", "costKind": "rent" },
                        { "name": "Rod and frit", "amount": 3900, "per": "year", "costKind": "materials", "tracedTo": "piece" },
                        { "name": "Van loan principal", "amount": 150, "per": "month", "costKind": "interest-and-loans", "deductible": false } ],
          "equipment": [ { "name": "Kiln", "cost": 3200, "salvage": 200, "inService": "2025-04-01", "depreciation": { "method": "straight-line", "lifeYears": 8 } } ],
          "household": [ { "name": "Home rent", "amount": 1450, "per": "month", "businessShare": 0.12 }, { "name": "Savings and emergencies", "amount": 250, "per": "month" } ],
          "otherIncome": [ { "name": "Evening classes", "amount": 280, "per": "month", "kind": "taxable", "daysPerYear": 12 } ],
          "tax": { "kind": "levies", "levies": [
              { "name": "self-employment", "share": 0.9235, "bands": [ { "upTo": 176100, "rate": 0.153 }, { "rate": 0.029 } ], "deductibleShare": 0.5 },
              { "name": "income tax", "allowance": 15750, "bands": [ { "upTo": 11925, "rate": 0.10 }, { "upTo": 48475, "rate": 0.12 }, { "rate": 0.22 } ] } ] },
          "materials": [ { "material": "clear-rod", "unit": "kg", "price": 38.00 }, { "material": "kiln-kwh", "unit": "kWh", "price": 0.21 } ],
          "limits": [ { "name": "kiln", "loadsPerYear": 240 } ],
          "pay": { "amount": 14, "per": "hour" }, "helpers": [ { "name": "Saturday help", "benchHoursPerYear": 120 } ], "soldShare": 0.95,
          "priceRule": { "retailMultiple": 2 } }
        """;

    public const string RichDesign = """
        { "name": "River drop pendant", "profile": "main",
          "making": { "steps": [ { "name": "torch", "handsOnMinutes": 34, "goodShare": 0.95 },
                                 { "name": "anneal", "handsOnMinutes": 20, "batchSize": 24, "goodShare": 0.98, "mayBeHurried": false, "uses": "kiln" },
                                 { "name": "polish", "handsOnMinutes": 9 } ],
                      "setupMinutes": 15, "runSize": 12 },
          "materials": [ { "material": "clear-rod", "quantity": 0.062, "wasteShare": 0.08 },
                         { "material": "kiln-kwh", "quantity": 16, "batchSize": 24, "at": "anneal" },
                         { "name": "gift box", "amount": 1.55, "at": "finish" } ],
          "seconds": { "share": 0.4, "price": 11 }, "soldShare": 0.9 }
        """;

    public const string RichChannel = """
        { "name": "Own web shop", "sells": "retail", "currency": "USD", "fees": [ { "name": "card", "rate": 0.024, "fixed": 0.25, "of": "paid" } ],
          "salesTax": { "rate": 0.0, "included": false }, "shipping": { "charged": 5.00, "cost": 6.20, "returnCost": 6.20 }, "piecesPerOrder": 1.4,
          "costPerPiece": 0.80, "returns": { "share": 0.03, "resaleShare": 0.8, "feesRefunded": false }, "priceStep": 1.00, "priceEnding": 0.00 }
        """;

    public const string RichQuote = """
        { "profile": "main", "channel": "web", "to": "wedding table, May", "validUntil": "2027-03-31", "promised": "2027-06-30",
          "lines": [ { "name": "Pendants", "quantity": 12, "design": "RB-014", "sure": 0.9, "runs": 2 },
                     { "name": "Goblets", "quantity": 30, "trialPieces": 2, "learning": { "rate": 0.85, "madeBefore": 6 },
                       "design": { "making": { "steps": [ { "name": "torch", "handsOnMinutes": 120, "goodShare": 0.87 } ], "setupMinutes": 45, "runSize": 30 },
                                   "materials": [ { "material": "clear-rod", "quantity": 0.3 }, { "name": "box", "amount": 2.10, "at": "finish" } ] } } ],
          "extra": [ { "name": "Design and drawing", "hours": 6, "kind": "design-fee" } ],
          "bought": [ { "name": "Engraver", "amount": 180 }, { "name": "Travel", "distance": 84, "rate": 0.70 } ],
          "rush": 0.25, "price": 4200.00, "deposit": { "share": 0.4 }, "payments": [ { "when": "delivery", "share": 0.6 } ],
          "revisionsIncluded": 2, "revisionHours": 1.5, "rights": { "text": "one year, shop display", "amount": 15 } }
        """;
}
