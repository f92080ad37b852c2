using System.Text;

namespace TenderKit.Catalog.Tests;

/// <summary>A temporary catalogue folder with one or two invented parts a family; tests change single cells of it.</summary>
internal sealed class SmallCatalog : IDisposable
{
    private const string Common = "code,description,unit_price,currency";

    private static readonly (string Name, string Text)[] Files =
    [
        ("luminaires", $"{Common},lead_time_days,input_power_w,flux_lm,photometric_file,min_voltage_v,max_voltage_v,least_level_fraction,colour_temperature_k,ip_code,ik_code,life_l80_h,wind_area_m2,max_ambient_c\nL-30,\"Road luminaire, 30 W\",82.50,USD,30,30,4500,road.ies,10,32,0.1,4000,66,8,60000,0.05,50\nL-20,Path luminaire 20 W,61.00,USD,,20,3000,path.ies,10,32,10 %,3000,66,8,60000,0.04,50\n"),
        ("modules", $"{Common},rated_wp,open_circuit_v,short_circuit_a,maximum_power_v,maximum_power_a,power_coefficient_per_k,voltage_coefficient_per_k,noct_c,length_m,width_m,max_series_fuse_a\nM-120,Module 120 Wp,58,USD,120,22.1,7.2,18.2,6.6,-0.0037,-0.0029,45,1.1,0.67,15\n"),
        ("batteries", $"{Common},chemistry,nominal_voltage_v,rated_ah,rated_hours,peukert_exponent,max_depth_fraction,cycles_at_depth,cycle_depth_fraction,calendar_years_at_25_c,charge_efficiency,discharge_efficiency,self_discharge_per_month_fraction,least_charge_c,max_operating_c,max_charge_a\nB-100,Lithium iron phosphate 12.8 V 100 Ah,310,USD,lithium_iron_phosphate,12.8,100,5,1.02,0.9,3000,0.8,12,0.98,0.98,0.02,0,60,50\n"),
        ("controllers", $"{Common},kind,system_voltages_v,rated_charge_a,rated_load_a,max_array_v,max_array_wp_per_v,max_array_short_circuit_a,efficiency,own_use_w,chemistries,schedule_parts,dimming,adjustable_disconnect,max_ambient_c\nC-15,Tracking controller 15 A,74,USD,tracking,12;24,15,15,55,20,20,0.96,0.1,GelLeadAcid;LithiumIronPhosphate,5,yes,no,60\n"),
        ("poles", $"{Common},height_m,base_diameter_mm,top_diameter_mm,wall_mm,yield_mpa,arm_reach_m,arm_tilt_degrees,base_plate_mm,zinc_um\nP-6,Pole 6 m,180,USD,6,140,76,3,235,1,10,300,70\n"),
        ("foundation_sets", $"{Common},length_m,width_m,depth_m,anchor_bolt_mm,anchor_bolt_count,anchor_bolt_length_mm,reinforcement_kg\nF-1,Block 0.7 m,25,USD,0.7,0.7,1,16,4,500,12\n"),
        ("cables", $"{Common},cores,cross_section_mm2,conductor_class,insulation,outdoor\nW-4,Cable 2 x 4 mm2,2.1,USD,2,4,flexible5,cross_linked90,yes\n"),
        ("protection", $"{Common},kind,rated_a,rated_v\nS-16,Fuse 16 A,3,USD,fuse,16,80\n"),
        ("enclosures", $"{Common},usable_volume_l,max_content_kg,ip_code,wind_area_m2\nE-40,Enclosure 40 l,45,USD,40,40,65,0.12\n"),
        ("brackets", $"{Common},max_module_area_m2,min_tilt_degrees,max_tilt_degrees\nK-1,Bracket,30,USD,1.5,10,45\n"),
        ("services", $"{Common},unit,use,price_valid_until\nX-1,Erect pole,40,USD,No.,erect_pole,2027-06-30\nX-2,Survey,15,USD,No.,survey,\n"),
    ];

    public SmallCatalog()
    {
        Folder = Path.Combine(Path.GetTempPath(), "catalog-" + Guid.NewGuid().ToString("N"));
        Directory.CreateDirectory(Path.Combine(Folder, "photometry"));
        foreach (var (name, text) in Files) File.WriteAllText(FileOf(name), text);
        File.WriteAllBytes(Path.Combine(Folder, "photometry", "road.ies"), Encoding.ASCII.GetBytes("road"));
        File.WriteAllBytes(Path.Combine(Folder, "photometry", "path.ies"), Encoding.ASCII.GetBytes("path"));
    }

    public string Folder { get; }

    public string FileOf(string family) => Path.Combine(Folder, family + ".csv");

    public SmallCatalog With(string family, string old, string replacement)
    {
        var text = File.ReadAllText(FileOf(family));
        if (!text.Contains(old, StringComparison.Ordinal)) throw new ArgumentException($"'{old}' is not in {family}", nameof(old));
        File.WriteAllText(FileOf(family), text.Replace(old, replacement, StringComparison.Ordinal));
        return this;
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
