using PlatformForge.Exports.Dxf;

namespace PlatformForge.Exports.Stock;

/// <summary>A sheet of cut lines as DXF, on layers for what is cut, scored and marked.</summary>
internal static class StockDxf
{
    private static readonly DxfLayer[] Layers = [new("CUT", 1), new("SCORE", 5), new("MARK", 3)];

    // DXF states the height of capitals, sheets the size of type.
    private const double CapHeight = 0.72;

    public static byte[] ToBytes(CutSheet sheet, string title) => DxfWriter.ToBytes(title, Layers, sheet.Parts.SelectMany(Entities));

    private static IEnumerable<DxfEntity> Entities(CutPart part) =>
    [
        .. part.Lines.Select(l => new DxfLine(NameOf(l.Layer), l.Points, l.IsClosed)),
        .. part.Rounds.Select(r => new DxfCircle(NameOf(r.Layer), r.Middle, r.Diameter / 2)),
        .. part.Words.Select(w => new DxfText(NameOf(CutLayer.Mark), w.At, CapHeight * w.Size, w.Text)),
    ];

    private static string NameOf(CutLayer layer) => Layers[(int)layer].Name;
}
