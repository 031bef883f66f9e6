using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings;

/// <summary>A row of an elevation, at a scale: what fits beside one another on a sheet, laid flat.</summary>
internal interface IElevationRow
{
    /// <summary>Height on the sheet, numbers included, mm.</summary>
    double Height { get; }

    /// <summary>Length on the sheet, mm.</summary>
    double Length { get; }

    /// <summary>Length of the wall that it shows, mm of the model.</summary>
    double Covers { get; }

    /// <summary>Whether a section begins where the row does; otherwise the row before goes on.</summary>
    bool Begins { get; }

    /// <summary>Heights at its left end over the line that it stands on, mm of the model: of the wall, and with what lies on that.</summary>
    (double Wall, double All) Left { get; }

    /// <summary>Draws it with its upper left corner at a place.</summary>
    void DrawOn(Sheet sheet, Point2 corner);
}
