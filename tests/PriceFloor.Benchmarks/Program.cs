using PriceFloor.Benchmarks;

// Every verb prints its figures as one Markdown table, in docs/performance.md's form. The last two are what the harness starts itself.
var verbs = new Dictionary<string, Func<string[], Task>>
{
    ["micro"] = Micro.RunAsync,
    ["http"] = BesideBare.RunAsync,
    ["node"] = BesideNode.RunAsync,
    ["compare"] = BeforeAndAfter.RunAsync,
    ["orders"] = OrdersBesideChecks.RunAsync,
    ["batch"] = SheetBatches.RunAsync,
    ["list"] = PriceListAfterAChange.RunAsync,
    ["statements"] = StatementsByRules.RunAsync,
    ["changes"] = ChangesOfNumbers.RunAsync,
    ["plans"] = PlansAndQuotes.RunAsync,
    ["log"] = LinesOfTheLog.RunAsync,
    ["shelf"] = ShelfOfTheLog.RunAsync,
    ["writes"] = Writes.RunAsync,
    ["studios"] = ManyStudios.RunAsync,
    ["hosts"] = HostsBesidePostgres.RunAsync,
    ["moments"] = EarlierMoments.RunAsync,
    ["postgres"] = BesidePostgres.RunAsync,
    ["growth"] = Growth.RunAsync,
    ["start"] = Starts.RunAsync,
    ["all"] = Everything.RunAsync,
    ["bare"] = BareApi.RunAsync,
};

if (args.Length == 0 || !verbs.TryGetValue(args[0], out var run))
{
    Console.Error.WriteLine("""
        dotnet run -c Release --project tests/PriceFloor.Benchmarks -- VERB, in the repository's root, where VERB is
          all                                    each of these in turn, about thirteen minutes, in one table
          http [SECONDS ROUNDS PROCESSES]        single price checks beside a bare Minimal API
          node [SECONDS ROUNDS PROCESSES]        single price checks beside a service written by hand for Node
          orders [SECONDS ROUNDS]                order checks of one item and of fifty beside single price checks
          batch [ROWS ROUNDS]                    price checks of a sheet beside a plain copy and a Python script
          list [DESIGNS ROUNDS]                  the price list after a change of the cost profile, and from memory
          statements [LINES ROUNDS]              a year of statements by the starter rules beside a maker's own; lines a month
          changes [DESIGNS ROUNDS]               what-ifs over many designs, and thousands of draws of one
          plans [ROUNDS]                         a plan of 500 lines, a quote of 50, a ladder of 12, an order of 50
          log [LINES ROUNDS]                     sales appended to the log, and price writes and checks beside them
          shelf [LINES ROUNDS]                   what the log says of one design, and of 500 beside each other
          writes [SECONDS ROUNDS]                designs stored by many writers beside the disk's own fsync
          studios [STUDIOS SECONDS ROUNDS]       a thousand studios in one service beside one studio
          hosts [STUDIOS SECONDS ROUNDS]         a thousand studios on PostgreSQL beside a thousand in files
          postgres [SECONDS ROUNDS REVISIONS FOLDER]
                                                 one studio on PostgreSQL beside one in a file; a published folder beside this one
          moments [REVISIONS]                    answers as of a moment among millions of revisions, on both engines
          growth [SECONDS ROUNDS]                the same questions as designs and revisions grow
          start [PROCESSES]                      from the start of a process to its first answers
          micro [BenchmarkDotNet's arguments]    what one question costs in the pricing library
          compare FOLDER FOLDER [as http]        two published folders, such as before and after a change
        """);
    return 1;
}

// What drives has the processors of what is driven: it goes on where an answer came in, without another thread that has to wake up.
Environment.SetEnvironmentVariable(ServedProcess.InlineSockets, "1");
await run(args[1..]);
return 0;
