package holdfast.model.scene;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class GridCellsTest {
  /** 580 mm from 10 mm on, cells of 12.7: 45.67 columns; 150 mm from the corner is 140 on the panel, 11.02 cells (derived). */
  @Test
  void namesCellsFromTheFrontLeft() {
    GridCells c = new GridCells(10, 10, 12.7, 46, 30);
    assertThat(c.name(10.1, 10.1)).isEqualTo("01-01");
    assertThat(c.name(150, 48)).isEqualTo("12-03");
    assertThat(c.name(-5, 9000)).isEqualTo("01-30");
    assertThat(GridCells.format(112, 7)).isEqualTo("112-07");
  }
}
