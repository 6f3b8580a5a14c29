using System.Globalization;
using PriceFloor.ParserFuzzing;

// Run by tests/fuzz-parsers.sh, which has the branches of the parsers counted first.
var seconds = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 30;
var seed = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 20270102;
Console.WriteLine($"seed {seed}, {seconds} s for each parser");
var failed = 0;
foreach (var parser in FuzzedParser.All)
    failed += await new CorpusLoop(parser, seed).Run(TimeSpan.FromSeconds(seconds)) ? 0 : 1;
return failed;
