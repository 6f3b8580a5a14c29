using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace PriceFloor.Benchmarks;

/// <summary>The script of python/ that checks a sheet as one would by hand.</summary>
public static class PythonScript
{
    private static readonly string s_script = Path.Combine("tests", "PriceFloor.Benchmarks", "python", "check_prices.py");

    /// <summary>Its own seconds and processor's seconds, without the start of Python; null where there is none.</summary>
    public static async Task<(double Seconds, double CpuSeconds)?> RunAsync(string priceList, string sheet, string answer)
    {
        try
        {
            using var python = Process.Start(new ProcessStartInfo("python3", [s_script, priceList, sheet, answer])
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
            })!;
            var printed = await python.StandardOutput.ReadToEndAsync();
            await python.WaitForExitAsync();
            if (python.ExitCode != 0)
                throw new InvalidOperationException("The script in Python failed.");
            var numbers = printed.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture)).ToList();
            return (numbers[0], numbers[1]);
        }
        catch (Win32Exception)
        {
            return null;
        }
    }
}
