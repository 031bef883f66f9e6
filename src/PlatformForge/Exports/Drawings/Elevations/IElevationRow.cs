using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>A row of an elevation, at a scale: what fits beside one another on a sheet, laid flat.</summary>
internal interface IElevationRow
{
    /// <summary>Height on the sheet, figures under its line included, mm.</summary>
    double Height { get; }

    /// <summary>What of it is under its line, mm.</summary>
    double Under { get; }

    /// <summary>Length on the sheet, mm.</summary>
    double Length { get; }

    /// <summary>Length of the wall that it shows, mm of the model.</summary>
    double Covers { get; }

    /// <summary>Whether a section begins where the row does; otherwise the row before goes on.</summary>
    bool Begins { get; }

    /// <summary>Height over the baseboard of its line, and of the highest that it shows, mm of the model.</summary>
    (double Base, double Top) Span { get; }

    /// <summary>Heights at its left end, from the lowest up.</summary>
    IReadOnlyList<RowLevel> Left { get; }

    /// <summary>Heights at its right end that differ from those at its left one.</summary>
    IReadOnlyList<RowLevel> Right { get; }

    /// <summary>Draws it with its upper left corner at a place.</summary>
    void DrawOn(Sheet sheet, Point2 corner);
}
