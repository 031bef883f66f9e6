using PlatformForge.Exports.Paper;
using PlatformForge.Exports.Stock;
using PlatformForge.Platforms.Specs;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Proofs;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys;

/// <summary>All of a project file while it is read.</summary>
internal sealed record ProjectDraft
{
    public LayoutSpec Layout { get; init; } = LayoutKeys.Table.DefaultsAt(new ModelScale(76.2));

    public IReadOnlyList<TrackEntry> Tracks { get; init; } = [];

    public IReadOnlyList<VehicleForm> Vehicles { get; init; } = [];

    public ClearanceEntry Clearance { get; init; } = new();

    public IReadOnlyList<PlatformSpec> Platforms { get; init; } = [];

    public PrinterSpec Printer { get; init; } = PrinterKeys.Printer.DefaultsAt(new ModelScale(76.2));

    public JointSpec Joint { get; init; } = new();

    public SectionSpec Sections { get; init; } = new();

    public PaperSpec Paper { get; init; } = new();

    public StockSpec Sheet { get; init; } = new();

    public ProofSpec? Gauges { get; init; }
}

/// <summary>The key model: every key that a project file may have.</summary>
internal static class ProjectKeys
{
    private static readonly TableRule Layout = LayoutKeys.Table.AsRule("layout", "What holds for the whole layout.") with { Required = true };

    public static KeyTable<ProjectDraft> Table { get; } = new KeyTable<ProjectDraft>(_ => new())
        .Own(Layout, ReadLayout)
        .Tables("track", "A track.", TrackKeys.Table, (t, key) => t with { Key = key }, (p, v) => p with { Tracks = v }, least: 1)
        .Tables(
            "vehicle",
            "A vehicle that runs past the platforms: list the longest and the widest you have.",
            VehicleKeys.Table,
            (v, key) => v with { Key = key },
            (p, v) => p with { Vehicles = v },
            least: 1)
        .Table(
            "clearance",
            "What is kept between platform and vehicles, entry by entry.",
            ClearanceKeys.Table,
            p => p.Clearance,
            (p, v) => p with { Clearance = v },
            required: true)
        .Tables("platform", "A platform.", PlatformKeys.Table, (p, key) => p with { Key = key }, (p, v) => p with { Platforms = v }, least: 1)
        .Table("printer", "The printer that the sections have to fit.", PrinterKeys.Printer, p => p.Printer, (p, v) => p with { Printer = v })
        .Table("joint", "How two sections are held in line.", PrinterKeys.Joint, p => p.Joint, (p, v) => p with { Joint = v })
        .Table("fits", "What fit coupons were found to need, mm: each in place of the fit of all openings of its kind that state none of their own.",
            FitKeys.Table, _ => null, (p, _) => p)
        .Table("sections", "How platforms are cut into sections.", PrinterKeys.Sections, p => p.Sections, (p, v) => p with { Sections = v })
        .Table("paper", "Full-size sheets to lay on the layout.", PaperKeys.Table, p => p.Paper, (p, v) => p with { Paper = v })
        .Table("sheet", "Card, plastic or ply to cut the platform from, for those who do not print.", SheetKeys.Table, p => p.Sheet,
            (p, v) => p with { Sheet = v })
        .Table("gauges", "Gauges and proofs that are printed before the platform is.", GaugeKeys.Table, p => null, (p, v) => p with { Gauges = v });

    /// <summary>The whole model as one table.</summary>
    public static TableRule Root => Table.AsRule("", "A platform project.");

    /// <summary>The layout is read first: its scale decides the defaults of all that follows.</summary>
    private static ProjectDraft ReadLayout(ProjectDraft draft, TreeNode node, string key, KeyReading reading)
    {
        if (reading.Table(Layout, node, key) is not { } table)
        {
            return draft;
        }

        var layout = LayoutKeys.Table.Read(draft.Layout, table, key, reading);
        if (double.IsFinite(layout.Scale.Ratio))
        {
            reading.Scale = layout.Scale;
        }

        return draft with { Layout = layout };
    }
}
