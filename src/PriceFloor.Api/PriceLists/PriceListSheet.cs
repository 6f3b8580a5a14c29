using System.IO.Pipelines;
using PriceFloor.Api.Http;
using PriceFloor.Api.Sheets;

namespace PriceFloor.Api.PriceLists;

/// <summary>A price list as a sheet.</summary>
public static class PriceListSheet
{
    public static async Task<byte[]> Of(PriceListAnswer list, SheetDialect dialect, bool mayRead, CancellationToken cancel)
    {
        using var bytes = new MemoryStream();
        var pipe = PipeWriter.Create(bytes, new StreamPipeWriterOptions(leaveOpen: true));
        string[] shortBy = mayRead ? ["shortBy"] : [];
        using (var sheet = new SheetDocument(pipe, dialect, ["sku", "name", "channel", "currency", "floorPrice", "targetPrice",
            "listedPrice", "verdict", "reason", .. shortBy]))
        {
            foreach (var row in list.Items)
            {
                sheet.Text(row.Sku).Text(row.Name).Text(row.Channel).Text(row.Currency).Number(row.FloorPrice).Number(row.TargetPrice)
                    .Number(row.ListedPrice)
                    .Text(row.Verdict is { } verdict ? KebabWords.Of(verdict) : null).Text(row.Reason);
                if (mayRead)
                    sheet.Number(row.ShortBy);
                sheet.EndRow();
                if (sheet.IsFull)
                    await sheet.FlushAsync(cancel);
            }

            await sheet.FlushAsync(cancel);
        }

        await pipe.CompleteAsync();
        return bytes.ToArray();
    }
}
