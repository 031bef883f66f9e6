using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;

namespace PlatformForge.Exports.Pdf;

/// <summary>A page as it goes into a book: its operators packed, and the few figures that the objects beside them are written from. It holds a small part of
/// what its sheet does.</summary>
/// <param name="Title">What the sheet shows.</param>
/// <param name="Width">Width of the page, points, as it is written.</param>
/// <param name="Height">Height of the page, points, as it is written.</param>
/// <param name="Matrix">Leads from mm on the sheet to points, as it is written.</param>
/// <param name="Opacities">Opacities below 1 that are used, in the order of their names.</param>
/// <param name="Patterns">Stripes that are used, in the order of their names.</param>
/// <param name="Packed">The operators.</param>
internal sealed record PdfLeaf(
    string Title, string Width, string Height, string Matrix, IReadOnlyList<double> Opacities, IReadOnlyList<(Rgb Colour, Pattern Pattern)> Patterns,
    byte[] Packed)
{
    /// <summary>A sheet as a page.</summary>
    public static PdfLeaf Of(Sheet sheet)
    {
        PdfContent? content = null;
        byte[] packed = PdfObjects.Packed(to =>
        {
            using var text = new Utf8Text(to);
            content = new(sheet, text);
        });
        return new(
            sheet.Title,
            PdfWriter.Written(t => t.Length(PdfContent.PointsPerMm * sheet.PaperWidth)),
            PdfWriter.Written(t => t.Length(PdfContent.PointsPerMm * sheet.PaperHeight)),
            PdfWriter.Written(t => PdfContent.Matrix(t, sheet)),
            content!.Opacities,
            content.Patterns,
            packed);
    }
}
