using static System.FormattableString;

namespace PlatformForge.Units;

/// <summary>
/// The bounds of everything that is read, in one place: what lies beyond is refused with the limit, before it costs time or memory.
/// Each is many times what a layout needs. <c>docs/limits.md</c> lists them; a test holds the page against <see cref="All"/>.
/// </summary>
public static class InputLimits
{
    /// <summary>Messages of one kind that are told one by one; the rest are counted.</summary>
    public const int MessagesOfAKind = 10;

    /// <summary>Project, vehicle and preset files and tables of measured gaps, bytes.</summary>
    public const int ProjectBytes = 1 << 20;

    /// <summary>Brackets inside one another in a project file.</summary>
    public const int ProjectDepth = 16;

    /// <summary>Names in a key or heading of a project file, joined by dots.</summary>
    public const int ProjectNames = 16;

    /// <summary>Headings in a project file.</summary>
    public const int ProjectHeadings = 10_000;

    /// <summary>Values in a project file, those of lists among them.</summary>
    public const int ProjectValues = 100_000;

    /// <summary>Letters or digits of a key or a number in a project file.</summary>
    public const int ProjectWord = 200;

    /// <summary>Survey tables and drawings, bytes.</summary>
    public const int SurveyBytes = 20 << 20;

    /// <summary>Rows of a survey table.</summary>
    public const int TableRows = 100_000;

    /// <summary>Columns of a survey table.</summary>
    public const int TableColumns = 100;

    /// <summary>Letters in a row of a survey table.</summary>
    public const int TableRowLetters = 10_000;

    /// <summary>Elements of a drawing: those of an SVG inside one another and all, and the entities of a DXF.</summary>
    public const int DrawingDepth = 200, DrawingElements = 200_000;

    /// <summary>Attributes of one element, in an SVG and in a 3MF.</summary>
    public const int MarkupAttributes = 200;

    /// <summary>Pairs of lines in a DXF.</summary>
    public const int DrawingPairs = 1_000_000;

    /// <summary>Points of a drawing's lines, curves as points on them.</summary>
    public const int DrawingPoints = 400_000;

    /// <summary>Largest coordinate of a drawing, in its units, and largest angle in it, degrees.</summary>
    public const double DrawingCoordinate = 1e9, DrawingAngle = 3600;

    /// <summary>An STL file and a 3MF file of an output folder, bytes.</summary>
    public const int MeshBytes = 20 << 20, PackageBytes = 64 << 20;

    /// <summary>Triangles of one section.</summary>
    public const int SectionTriangles = 200_000;

    /// <summary>The model part of a 3MF after unpacking, bytes.</summary>
    public const int ModelBytes = 200 << 20;

    /// <summary>Triangles of a 3MF, and after all its groups are taken apart.</summary>
    public const int ModelTriangles = 2_000_000;

    /// <summary>Parts of a 3MF's archive, objects and members of groups, things on a plate, and lines of metadata.</summary>
    public const int ModelParts = 1000, ModelObjects = 10_000, ModelItems = 1000, ModelMetadata = 100;

    /// <summary>Groups inside one another in a 3MF.</summary>
    public const int ModelDepth = 16;

    /// <summary>A text of a 3MF's model or lists: a name, a line of metadata.</summary>
    public const int ModelText = 100_000;

    /// <summary>XML elements inside one another in a 3MF.</summary>
    public const int ModelElementsDeep = 64;

    /// <summary>Largest coordinate of a mesh, and farthest that a motion carries it, mm: the plates of a long platform lie side by side.</summary>
    public const double MeshCoordinate = 1e4, MotionCoordinate = 1e6;

    /// <summary>Sides of a section's triangles put end to end, mm: what is measured piece by piece.</summary>
    public const double MeshSides = 5e6;

    /// <summary>JSON files of an output folder, bytes.</summary>
    public const int JsonBytes = 20 << 20;

    /// <summary>Objects and lists inside one another in a JSON file, and values in it.</summary>
    public const int JsonDepth = 32, JsonValues = 1_000_000;

    /// <summary>Files of an output folder.</summary>
    public const int FolderFiles = 20_000;

    /// <summary>Bytes of any file of an output folder.</summary>
    public const int FileBytes = PackageBytes;

    /// <summary>Bytes of all files of an output folder that are read together.</summary>
    public const long FolderBytes = 2L << 30;

    /// <summary>The page's table: what is read, what of it, and the limit in words.</summary>
    public static IReadOnlyList<(string What, string Of, string Limit)> All { get; } =
    [
        ("project, vehicle or preset file (TOML), table of measured gaps", "length", Bytes(ProjectBytes)),
        ("", "brackets inside one another", Count(ProjectDepth)),
        ("", "names in a key, joined by dots", Count(ProjectNames)),
        ("", "headings", Count(ProjectHeadings)),
        ("", "values", Count(ProjectValues)),
        ("", "letters of a key, digits of a number", Count(ProjectWord)),
        ("survey table (CSV)", "length", Bytes(SurveyBytes)),
        ("", "rows", Count(TableRows)),
        ("", "columns", Count(TableColumns)),
        ("", "letters in a row", Count(TableRowLetters)),
        ("drawing (SVG, DXF)", "length", Bytes(SurveyBytes)),
        ("", "elements inside one another", Count(DrawingDepth)),
        ("", "elements", Count(DrawingElements)),
        ("", "attributes of an element of an SVG", Count(MarkupAttributes)),
        ("", "pairs of lines in a DXF", Count(DrawingPairs)),
        ("", "points of all lines, curves as points on them", Count(DrawingPoints)),
        ("", "coordinate, in its units", Count(DrawingCoordinate)),
        ("", "angle, degrees", Count(DrawingAngle)),
        ("STL file", "length", Bytes(MeshBytes)),
        ("", "triangles", Count(SectionTriangles)),
        ("", "coordinate, mm", Count(MeshCoordinate)),
        ("", "sides of all triangles together, mm", Count(MeshSides)),
        ("3MF file", "length", Bytes(PackageBytes)),
        ("", "length of the model after unpacking", Bytes(ModelBytes)),
        ("", "triangles, groups taken apart", Count(ModelTriangles)),
        ("", "coordinate, mm", Count(MeshCoordinate)),
        ("", "motion, mm, of a 3MF file or a manifest", Count(MotionCoordinate)),
        ("", "parts of the archive", Count(ModelParts)),
        ("", "objects and members of groups", Count(ModelObjects)),
        ("", "things on a plate", Count(ModelItems)),
        ("", "lines of metadata", Count(ModelMetadata)),
        ("", "groups inside one another", Count(ModelDepth)),
        ("", "elements inside one another", Count(ModelElementsDeep)),
        ("", "attributes of an element", Count(MarkupAttributes)),
        ("", "letters of a name or of a line of metadata", Count(ModelText)),
        ("manifest.json, design.json", "length", Bytes(JsonBytes)),
        ("", "objects and lists inside one another", Count(JsonDepth)),
        ("", "values", Count(JsonValues)),
        ("output folder", "files", Count(FolderFiles)),
        ("", "length of any file", Bytes(FileBytes)),
        ("", "length of all files that are read", Bytes(FolderBytes)),
        ("messages", "of one kind, told one by one", Count(MessagesOfAKind)),
    ];

    /// <summary>A length of a file in words: in MB where it is a whole number of them.</summary>
    public static string Bytes(long bytes) => bytes >= 1 << 20 ? Invariant($"{bytes >> 20} MB") : Invariant($"{bytes} bytes");

    private static string Count(double count) => count.ToString("#,0", System.Globalization.CultureInfo.InvariantCulture);
}
