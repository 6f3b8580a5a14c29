using System.Globalization;
using System.Text;

namespace PriceFloor.Benchmarks;

/// <summary>A sheet of prices as a shop would send it: below the floor, between floor and target, and above.</summary>
public static class SheetOfChecks
{
    /// <summary>So many rows below a header, of 200 designs on 5 channels.</summary>
    public static void Write(string path, int rows)
    {
        using var sheet = new StreamWriter(path, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), 1 << 20);
        sheet.Write("sku,channel,price\n");
        for (var i = 0; i < rows; i++)
            sheet.Write(string.Create(CultureInfo.InvariantCulture,
                $"D-{i * 7 % 200},c{i / 3 % BenchStudio.Channels},{10 + (i * 31 % 430)}.{i * 17 % 100:00}\n"));
    }
}
