using System.IO.Compression;
using System.Xml;
using PriceFloor.Api.Http;

namespace PriceFloor.Api.Workbooks.Files;

/// <summary>
/// The parts of a workbook file, which is a zip of XML. Everything that is unpacked is counted, and no XML may name anything outside of it.
/// </summary>
internal sealed class PackedParts : IDisposable
{
    private const int MostParts = 2000;

    private readonly ZipArchive _zip;
    private readonly Dictionary<string, ZipArchiveEntry> _parts = new(StringComparer.OrdinalIgnoreCase);
    private readonly long _mostBytes;
    private long _bytes;

    public PackedParts(byte[] file, long mostBytes)
    {
        if (file is not [(byte)'P', (byte)'K', ..])
            throw new WorkbookException(InputCodes.Malformed, file is [0xD0, 0xCF, ..]
                ? "This is a workbook of an old kind, or one with a password; save it as .xlsx, without a password."
                : "This is not a workbook; save it as .xlsx and send that file.");
        (_zip, _mostBytes) = (new ZipArchive(new MemoryStream(file, writable: false), ZipArchiveMode.Read), mostBytes);
        if (_zip.Entries.Count > MostParts)
            throw new WorkbookException(null, $"The workbook has more than {MostParts} parts.");
        foreach (var entry in _zip.Entries)
            _parts.TryAdd(entry.FullName.TrimStart('/'), entry);
    }

    public void Count(int bytes)
    {
        _bytes += bytes;
        if (_bytes > _mostBytes)
            throw new WorkbookException(null, FormattableString.Invariant($"The workbook has more than {_mostBytes} bytes when it is unpacked; ")
                + "delete sheets and rows that the studio does not need.");
    }

    /// <summary>A part as XML; null if the file does not have it.</summary>
    public XmlReader? Open(string part) => !_parts.TryGetValue(part, out var entry) ? null
        : XmlReader.Create(new BoundedStream(entry.Open(), this), new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            IgnoreComments = true,
            IgnoreProcessingInstructions = true,
            CloseInput = true,
        });

    /// <summary>What a part refers to, by id: the kind and the part. Nothing outside the file is followed.</summary>
    public Dictionary<string, (string Kind, string Part)> Links(string of)
    {
        var slash = of.LastIndexOf('/') + 1;
        var links = new Dictionary<string, (string, string)>();
        using var xml = Open($"{of[..slash]}_rels/{of[slash..]}.rels");
        while (xml?.Read() == true)
            if (xml is { NodeType: XmlNodeType.Element, LocalName: "Relationship" } && xml.GetAttribute("TargetMode") != "External"
                && xml.GetAttribute("Id") is { } id && xml.GetAttribute("Type") is { } type && xml.GetAttribute("Target") is { } target)
                links.TryAdd(id, (type[(type.LastIndexOf('/') + 1)..], Resolved(of[..slash], target)));
        return links;
    }

    public void Dispose() => _zip.Dispose();

    private static string Resolved(string folder, string target)
    {
        var path = new List<string>();
        foreach (var step in (target.StartsWith('/') ? target : folder + target).Split('/', StringSplitOptions.RemoveEmptyEntries))
            if (step != "..")
                path.Add(step);
            else if (path.Count > 0)
                path.RemoveAt(path.Count - 1);
        return string.Join('/', path);
    }
}
